package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import polewright.operations.Workbench;
import polewright.operations.night.NightsFile;
import polewright.report.json.NightJson;
import polewright.report.text.NightWords;
import polewright.session.NightState;
import polewright.session.StandingEvents;
import polewright.session.event.LoggedEvent;

@Command(
        name = "replay",
        description = "Replay a night from a file: fix and advice after each event. Nothing is logged.")
final class ReplayCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Parameters(paramLabel = "FILE", description = "JSON Lines, one event per line; see docs/events.md.")
    private Path file;

    @Mixin
    private Output output;

    ReplayCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        // For each event the night so far is compared with the previous one: arrays are made of this kind of list in
        // one step.
        List<LoggedEvent> events = new ArrayList<>(NightsFile.readOne(file));
        NightState.ModelCache models = new NightState.ModelCache();
        List<LoggedEvent> whole = StandingEvents.among(events).asLogged();
        List<ObjectNode> nodes = new ArrayList<>();
        // All at the end: impossible events are refused before half a night is printed.
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < events.size(); i++) {
            LoggedEvent event = events.get(i);
            NightState night = NightState.of(events.subList(0, i + 1), event.at(), models);
            if (output.isJson()) {
                nodes.add(NightJson.afterEvent(event, night));
            } else {
                lines.addAll(NightWords.afterEvent(event, night, whole));
            }
        }
        if (output.isJson()) {
            output.print(workbench, nodes);
        } else {
            output.say(workbench, lines);
        }
        return 0;
    }
}
