package polewright.app.command;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.app.Workbench;
import polewright.app.input.SiteInput;
import polewright.app.input.UtcInput;
import polewright.night.event.NightEvent;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Where, when, and through what air. */
final class SkyOptions {
    @Option(
            names = "--site",
            paramLabel = "LAT,LON[,HEIGHT]",
            converter = SiteInput.class,
            description = "Degrees, north and east positive; metres. Default: the last night's site.")
    private @Nullable Site site;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            converter = UtcInput.class,
            description = "With zone: 2026-11-25T20:00Z or 2026-11-25T21:00+01:00. Default: now.")
    private @Nullable Instant at;

    @Option(
            names = "--pressure",
            paramLabel = "HPA",
            description = "Pressure at the site. Default: mean for its height.")
    private @Nullable Double pressureHpa;

    @Option(names = "--temperature", paramLabel = "C", description = "Air temperature. Default: 10.")
    private @Nullable Double temperatureC;

    Optional<Site> givenSite() {
        return Optional.ofNullable(site);
    }

    Site site(Optional<NightEvent.Begun> remembered) {
        return givenSite()
                .or(() -> remembered.map(NightEvent.Begun::site))
                .orElseThrow(
                        () -> new WrongUsage(
                                "no site is known yet: add --site LAT,LON[,HEIGHT] (degrees, north and east positive; metres)."));
    }

    Instant at(Workbench workbench) {
        return at == null ? workbench.now() : at;
    }

    Weather weather(Site where) {
        Weather mean = Weather.standardAt(where.heightMetres());
        return WrongUsage.unlessUsable(() -> new Weather(
                pressureHpa == null ? mean.pressureHpa() : pressureHpa,
                temperatureC == null ? mean.temperatureC() : temperatureC,
                mean.relativeHumidity()));
    }

    ObservingMoment moment(Workbench workbench, Optional<NightEvent.Begun> remembered, double ut1MinusUtcSeconds) {
        Site where = site(remembered);
        SkyTime when = WrongUsage.unlessUsable(() -> new SkyTime(at(workbench), ut1MinusUtcSeconds));
        return ObservingMoment.of(where, when, weather(where));
    }
}
