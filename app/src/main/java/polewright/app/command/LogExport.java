package polewright.app.command;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import polewright.app.Workbench;
import polewright.night.event.LoggedEvent;
import polewright.night.log.NightId;
import polewright.night.log.NightLog;

@Command(name = "export", description = "Write a night as JSON Lines, one event a line.")
final class LogExport implements Callable<Integer> {
    private final Workbench workbench;

    @Parameters(paramLabel = "FILE", description = "A new file.")
    private Path file;

    @Mixin
    private NightOption chosen;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    LogExport(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        try (NightLog opened = log.openExisting(workbench)) {
            NightId night = chosen.in(opened);
            List<LoggedEvent> events = opened.events(night);
            ResultFile.writeNew(file, NightsFile.text(List.of(events)));
            if (output.isJson()) {
                ObjectNode node = JsonNodeFactory.instance.objectNode();
                node.put("night", night.number());
                node.put("events", events.size());
                output.print(workbench, node);
            } else {
                output.say(workbench, "Written: " + NightsFile.count(events.size()) + " to " + file);
            }
        }
        return 0;
    }
}
