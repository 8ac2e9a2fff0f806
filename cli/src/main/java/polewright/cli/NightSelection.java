package polewright.cli;

import java.util.List;
import java.util.function.BiConsumer;
import picocli.CommandLine.Mixin;
import polewright.operations.Workbench;
import polewright.session.NightId;
import polewright.session.event.LoggedEvent;
import polewright.store.NightLog;

/** Selects a log and one of its nights: the options of a command that reads one whole night. */
final class NightSelection {
    @Mixin
    private NightOption chosen;

    @Mixin
    private LogOption log;

    /** Opens the log and passes on the night with all its events. */
    void read(Workbench workbench, BiConsumer<NightId, List<LoggedEvent>> reader) {
        try (NightLog opened = log.openExisting(workbench)) {
            NightId night = chosen.in(opened);
            reader.accept(night, opened.events(night));
        }
    }
}
