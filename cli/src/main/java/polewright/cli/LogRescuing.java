package polewright.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.night.NightsFile;
import polewright.report.text.Wrapping;
import polewright.store.LogRescue;

@Command(
        name = "rescue",
        description = {
            "Write what can be read of a damaged log to a new JSON Lines file, night by night.",
            "The log itself is not changed."
        },
        footer = {
            "",
            "Then move the damaged log away and make a new one from the file:",
            "  polewright log import nights.jsonl --go-on"
        })
final class LogRescuing implements Callable<Integer> {
    private final Workbench workbench;

    @Parameters(paramLabel = "FILE", description = "A new file.")
    private Path file;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    LogRescuing(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        Path damaged = log.file(workbench);
        try {
            LogRescue.Found found = LogRescue.read(damaged);
            if (found.nights().isEmpty() && found.loose().isEmpty()) {
                throw new OperationFailed("no event can be read from " + damaged + "." + copies(damaged));
            }
            if (!found.loose().isEmpty() && Files.exists(looseFile())) {
                throw new OperationFailed(looseFile() + " already exists. Name another file than " + file + ".");
            }
            if (!found.nights().isEmpty()) {
                ResultFile.writeNew(file, NightsFile.text(found.nights().values()));
            }
            if (!found.loose().isEmpty()) {
                ResultFile.writeNew(looseFile(), NightsFile.text(List.of(found.loose())));
            }
            if (output.isJson()) {
                output.print(workbench, json(found));
            } else {
                output.say(workbench, lines(found, damaged));
            }
        } catch (IOException e) {
            throw new OperationFailed(damaged + " cannot be read. Check the name and the file's permissions.");
        }
        return 0;
    }

    /** Such as {@code nights-loose.jsonl} for {@code nights.jsonl}. */
    private Path looseFile() {
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        int end = dot <= 0 ? name.length() : dot;
        return file.resolveSibling(name.substring(0, end) + "-loose" + name.substring(end));
    }

    private static long events(LogRescue.Found found) {
        return found.nights().values().stream().mapToLong(List::size).sum();
    }

    private List<String> lines(LogRescue.Found found, Path damaged) throws IOException {
        List<String> lines = new ArrayList<>();
        int nights = found.nights().size();
        if (nights > 0) {
            lines.add("Rescued: " + NightsFile.count(events(found)) + " of " + nights
                    + (nights == 1 ? " night, in " : " nights, in ") + file);
        }
        if (!found.loose().isEmpty()) {
            lines.add("LOOSE  " + NightsFile.count(found.loose().size())
                    + " without the beginning of their night, or without" + " the event that they change, in "
                    + looseFile());
        }
        if (!found.missing().isEmpty()) {
            lines.add("GONE  Not found: " + String.join(", ", found.missing())
                    + ". Later events of a night may be missing too.");
        }
        String copies = copies(damaged);
        if (!copies.isEmpty()) {
            lines.add("COPY " + copies);
        }
        if (nights > 0) {
            lines.add("THEN  Move " + damaged + " away, and make a new log from what was rescued:");
            lines.add("      " + Wrapping.unbroken("polewright log import " + file + " --go-on" + log.asTyped()));
        }
        return lines;
    }

    /** Where an older but intact copy of a log exists; empty if there is none. */
    private static String copies(Path damaged) throws IOException {
        List<Path> copies = LogRescue.copies(damaged);
        return copies.isEmpty()
                ? ""
                : " Copies of the log from before the last nights are in "
                        + copies.get(0).getParent() + ", the newest as "
                        + copies.get(0).getFileName() + ".";
    }

    private ObjectNode json(LogRescue.Found found) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("nights", found.nights().size());
        node.put("events", events(found));
        node.put("loose", found.loose().size());
        found.missing().forEach(node.putArray("missing")::add);
        return node;
    }
}
