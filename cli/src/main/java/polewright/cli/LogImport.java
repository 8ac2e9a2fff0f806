package polewright.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.operations.Workbench;
import polewright.operations.night.NightsFile;
import polewright.session.NightId;
import polewright.store.NightLog;

@Command(name = "import", description = "Add nights from a JSON Lines file: the whole file or nothing.")
final class LogImport implements Callable<Integer> {
    private final Workbench workbench;

    @Parameters(paramLabel = "FILE", description = "One event per line; see docs/events.md. Each begin starts a night.")
    private Path file;

    @Option(names = "--go-on", description = "Continue the file's last night: what is logged next is added to it.")
    private boolean goesOn;

    @Mixin
    private LogOption log;

    @Mixin
    private OnceOption once;

    @Mixin
    private Output output;

    LogImport(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        try (NightLog opened = log.open(workbench)) {
            NightsFile.Added added = NightsFile.addTo(opened, file, goesOn, once.key());
            List<NightId> ids = added.nights();
            long events = added.events();
            if (output.isJson()) {
                output.print(workbench, json(ids, events));
            } else {
                output.say(
                        workbench,
                        "Added: " + NightsFile.count(events) + (ids.size() == 1 ? " as night " : " as nights ")
                                + ids.get(0).number()
                                + (ids.size() == 1
                                        ? ""
                                        : " to " + ids.get(ids.size() - 1).number()) + ".");
            }
        }
        return 0;
    }

    private static ObjectNode json(List<NightId> ids, long events) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("night", ids.get(0).number());
        node.put("events", events);
        if (ids.size() > 1) {
            ArrayNode nights = node.putArray("nights");
            ids.forEach(id -> nights.add(id.number()));
        }
        return node;
    }
}
