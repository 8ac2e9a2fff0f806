package polewright.cli;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.operations.Workbench;
import polewright.operations.input.UtcInput;
import polewright.session.event.NightEvent;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Site, time and weather. */
final class SkyOptions {
    @Mixin
    private SiteOptions where;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            converter = UtcInput.class,
            description = "Time with time zone: 2026-11-25T20:00Z or 2026-11-25T21:00+01:00. Default: now.")
    private @Nullable Instant at;

    Optional<Site> givenSite() {
        return where.given();
    }

    Site site(Workbench workbench, Optional<NightEvent.Begun> remembered) {
        return where.site(workbench, remembered);
    }

    SiteOptions where() {
        return where;
    }

    Instant at(Workbench workbench) {
        return at == null ? workbench.now() : at;
    }

    Weather weather(Site site) {
        return where.weather(site);
    }

    ObservingMoment moment(Workbench workbench, Optional<NightEvent.Begun> remembered, double ut1MinusUtcSeconds) {
        Site site = site(workbench, remembered);
        SkyTime usual = SkyTime.of(at(workbench));
        SkyTime when = WrongUsage.unlessUsable(() -> new SkyTime(usual.utc(), ut1MinusUtcSeconds));
        return ObservingMoment.of(site, when, weather(site));
    }
}
