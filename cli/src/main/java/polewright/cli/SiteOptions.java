package polewright.cli;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.operations.Workbench;
import polewright.operations.input.SiteInput;
import polewright.report.text.SiteWords;
import polewright.session.DoubtfulSite;
import polewright.session.event.NightEvent;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Site and weather. */
final class SiteOptions {
    @Option(
            names = "--site",
            paramLabel = "LAT,LON[,HEIGHT]",
            converter = SiteInput.class,
            description = "Degrees, north and east positive; metres. Default: the last night's site.")
    private @Nullable Site site;

    @Option(
            names = "--pressure",
            paramLabel = "HPA",
            description = "Pressure at the site. Default: mean for its height.")
    private @Nullable Double pressureHpa;

    @Option(names = "--temperature", paramLabel = "C", description = "Air temperature. Default: 10.")
    private @Nullable Double temperatureC;

    Optional<Site> given() {
        return Optional.ofNullable(site);
    }

    /** The site that was typed, or else the last night's; adds a note if the typed one looks wrong. */
    Site site(Workbench workbench, Optional<NightEvent.Begun> remembered) {
        doubt(workbench, workbench.now(), remembered)
                .filter(DoubtfulSite::isOddAnywhere)
                .ifPresent(doubtful -> {
                    workbench.err().println(TerminalOutput.printable("NOTE  " + sentence(doubtful, workbench)));
                    workbench.err().flush();
                });
        return siteToLog(remembered);
    }

    /** The same without a note, for callers that give their own. */
    Site siteToLog(Optional<NightEvent.Begun> remembered) {
        return given().or(() -> remembered.map(NightEvent.Begun::site))
                .orElseThrow(() ->
                        new WrongUsage("no site is known yet. Add --site LAT,LON[,HEIGHT] (degrees, north and east"
                                + " positive; metres)."));
    }

    /** Doubts about the site that was typed, if any. */
    Optional<DoubtfulSite> doubt(Workbench workbench, Instant at, Optional<NightEvent.Begun> remembered) {
        return given().flatMap(typed ->
                DoubtfulSite.of(typed, workbench.clock().getZone(), at, remembered.map(NightEvent.Begun::site)));
    }

    private static String sentence(DoubtfulSite doubtful, Workbench workbench) {
        return TerminalWording.GENERAL.of(
                SiteWords.sentences(doubtful, workbench.clock().getZone().getId()));
    }

    Weather weather(Site where) {
        Weather mean = Weather.standardAt(where.heightMetres());
        return WrongUsage.unlessUsable(() -> new Weather(
                pressureHpa == null ? mean.pressureHpa() : pressureHpa,
                temperatureC == null ? mean.temperatureC() : temperatureC,
                mean.relativeHumidity()));
    }
}
