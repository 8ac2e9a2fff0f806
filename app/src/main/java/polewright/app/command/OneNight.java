package polewright.app.command;

import java.util.List;
import java.util.function.BiConsumer;
import picocli.CommandLine.Mixin;
import polewright.app.Workbench;
import polewright.night.event.LoggedEvent;
import polewright.night.log.NightId;
import polewright.night.log.NightLog;

/** Which log and which night of it: the options of a command that reads one whole night. */
final class OneNight {
    @Mixin
    private NightOption chosen;

    @Mixin
    private LogOption log;

    /** Opens the log and gives the night with all its events. */
    void read(Workbench workbench, BiConsumer<NightId, List<LoggedEvent>> reader) {
        try (NightLog opened = log.openExisting(workbench)) {
            NightId night = chosen.in(opened);
            reader.accept(night, opened.events(night));
        }
    }
}
