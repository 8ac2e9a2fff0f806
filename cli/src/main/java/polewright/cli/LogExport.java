package polewright.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import polewright.operations.Workbench;
import polewright.operations.night.NightsFile;
import polewright.session.NightId;
import polewright.session.event.LoggedEvent;

@Command(name = "export", description = "Write a night as JSON Lines, one event per line.")
final class LogExport implements Callable<Integer> {
    private final Workbench workbench;

    @Parameters(paramLabel = "FILE", description = "A new file.")
    private Path file;

    @Mixin
    private NightSelection night;

    @Mixin
    private Output output;

    LogExport(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        night.read(workbench, this::write);
        return 0;
    }

    private void write(NightId id, List<LoggedEvent> events) {
        ResultFile.writeNew(file, NightsFile.text(List.of(events)));
        if (output.isJson()) {
            ObjectNode node = JsonNodeFactory.instance.objectNode();
            node.put("night", id.number());
            node.put("events", events.size());
            output.print(workbench, node);
        } else {
            output.say(workbench, "Written: " + NightsFile.count(events.size()) + " to " + file);
        }
    }
}
