package polewright.app.command;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.app.input.SiteInput;
import polewright.night.event.NightEvent;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Where, and through what air. */
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

    Site site(Optional<NightEvent.Begun> remembered) {
        return given().or(() -> remembered.map(NightEvent.Begun::site))
                .orElseThrow(
                        () -> new WrongUsage(
                                "no site is known yet: add --site LAT,LON[,HEIGHT] (degrees, north and east positive; metres)."));
    }

    Weather weather(Site where) {
        Weather mean = Weather.standardAt(where.heightMetres());
        return WrongUsage.unlessUsable(() -> new Weather(
                pressureHpa == null ? mean.pressureHpa() : pressureHpa,
                temperatureC == null ? mean.temperatureC() : temperatureC,
                mean.relativeHumidity()));
    }
}
