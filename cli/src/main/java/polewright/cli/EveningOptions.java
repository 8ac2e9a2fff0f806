package polewright.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.operations.Workbench;
import polewright.operations.input.FileInput;
import polewright.operations.setup.SkylineActions;
import polewright.planning.tonight.Evening;
import polewright.planning.tonight.LoggedEvening;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.store.NightLog;

/** Site, time and equipment for planning a night: as typed, otherwise from the last night of the log. */
final class EveningOptions {
    @Mixin
    private SkyOptions sky;

    @Mixin
    private RigOption rig;

    @Mixin
    private LogOption log;

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            description = "Time zone of the times shown, e.g. Europe/London or UTC. Default: this computer's.")
    private @Nullable String zone;

    @Option(
            names = "--horizon",
            paramLabel = "FILE.csv",
            converter = FileInput.class,
            description =
                    "The skyline: azimuth and altitude in degrees, one corner per line. Default: the last night's.")
    private @Nullable Path skyline;

    /** The typed and remembered values; {@code night} is the last night, if it is at this site. */
    record Typed(Evening evening, Optional<NightState> night, ZoneId zone) {}

    Typed typed(Workbench workbench) {
        Optional<NightState> last = last(workbench);
        Optional<NightEvent.Begun> remembered = last.map(NightState::begun);
        Site site = sky.site(workbench, remembered);
        Optional<NightState> here = last.filter(night -> night.begun().site().equals(site));
        Horizon horizon =
                skyline == null ? here.map(NightState::horizon).orElse(Horizon.OPEN) : SkylineActions.read(skyline);
        Evening evening = Evening.at(
                site,
                sky.weather(site),
                rig.rig(remembered),
                horizon,
                sky.at(workbench),
                here.flatMap(LoggedEvening::axis));
        return new Typed(evening, here, zone(workbench));
    }

    private Optional<NightState> last(Workbench workbench) {
        if (!Files.exists(log.file(workbench))) {
            return Optional.empty();
        }
        try (NightLog opened = log.open(workbench)) {
            return opened.latest().map(night -> NightState.of(opened.events(night)));
        }
    }

    private ZoneId zone(Workbench workbench) {
        if (zone == null) {
            return workbench.clock().getZone();
        }
        try {
            return ZoneId.of(zone);
        } catch (DateTimeException e) {
            throw new WrongUsage("'" + zone + "' is not a time zone. Write one such as Europe/London, +01:00 or UTC.");
        }
    }
}
