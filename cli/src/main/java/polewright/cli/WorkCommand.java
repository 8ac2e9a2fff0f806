package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import polewright.operations.Workbench;
import polewright.operations.action.Action;
import polewright.operations.action.NightEntry;
import polewright.report.json.ZoneJson;
import polewright.report.text.Line;
import polewright.report.text.WorkChangeWords;
import polewright.session.NightState;
import polewright.session.event.NightEvent;

/** A command that sets tonight's work and reports its tolerance on the axis. */
class WorkCommand extends ActionCommand {
    @Mixin
    private ZonePictureOption picture;

    WorkCommand(Workbench workbench, Action action) {
        super(workbench, action);
    }

    static CommandLine of(Action action, Workbench workbench) {
        return line(new WorkCommand(workbench, action));
    }

    @Override
    List<String> found(NightEntry.Logged entry) {
        return entry.last().event() instanceof NightEvent.WorkSet set
                ? Line.inTerminal(WorkChangeWords.lines(set, entry))
                : List.of();
    }

    @Override
    Optional<ObjectNode> foundJson(NightEntry.Logged entry) {
        return WorkChangeWords.zone(entry).map(ZoneJson::of);
    }

    @Override
    String logged(NightEntry.Logged entry) {
        return entry.last().event() instanceof NightEvent.WorkSet ? "work set" : "allowance set";
    }

    @Override
    void afterwards(NightState night) {
        picture.draw(bench(), output(), night);
    }
}
