package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.operations.Workbench;
import polewright.operations.action.ActionContext;
import polewright.report.json.ZoneJson;
import polewright.report.text.WorkWords;
import polewright.report.text.ZoneNotes;
import polewright.report.text.ZoneWords;
import polewright.session.NightState;
import polewright.session.event.NightEvent;

/** A command that sets tonight's work and reports its tolerance on the axis. */
abstract class WorkCommand extends AppendingCommand {
    @Mixin
    private ZonePictureOption picture;

    private @Nullable WorkZone zone;
    private List<WorkItem> changed = List.of();
    private List<WorkItem> replaced = List.of();
    private List<String> notes = List.of();

    WorkCommand(Workbench workbench) {
        super(workbench, "work set");
    }

    /** The whole work from now on. */
    abstract Work work(Workbench bench, NightEvent.Begun begun, List<WorkItem> before);

    @Override
    List<NightEvent> events(ActionContext context) {
        NightEvent.Begun begun = context.begun();
        List<WorkItem> present = context.before().work().map(Work::items).orElse(List.of());
        Work work = work(bench(), begun, present);
        zone = TonightsWork.zone(begun, work);
        changed = work.items().stream().filter(item -> !present.contains(item)).toList();
        replaced = present.stream().filter(item -> !work.items().contains(item)).toList();
        notes = new ArrayList<>(ZoneNotes.of(zone, begun.rig()));
        List<WorkItem> gone = replaced.stream()
                .filter(old -> changed.stream().noneMatch(item -> isNamedAlike(item, old)))
                .toList();
        if (!gone.isEmpty()) {
            notes.add("NOTE  Tonight is no longer for " + WorkWords.names(gone) + ".");
        }
        return List.of(new NightEvent.WorkSet(work));
    }

    @Override
    List<String> found() {
        List<String> lines = new ArrayList<>();
        for (WorkItem item : changed) {
            lines.add("WORK  " + WorkWords.of(item)
                    + replaced.stream()
                            .filter(old -> isNamedAlike(item, old))
                            .map(old -> " In place of '" + old.name() + "'.")
                            .collect(Collectors.joining()));
        }
        if (zone != null) {
            lines.addAll(ZoneWords.of(zone));
        }
        return lines;
    }

    @Override
    List<String> notes() {
        return notes;
    }

    @Override
    Optional<ObjectNode> foundJson() {
        return Optional.ofNullable(zone).map(ZoneJson::of);
    }

    @Override
    void afterwards(NightState night) {
        picture.draw(bench(), output(), night);
    }

    /** The work so far, with this item replacing one of its name, or added. */
    static Work with(List<WorkItem> before, WorkItem item) {
        List<WorkItem> items = new ArrayList<>(before);
        for (int i = 0; i < items.size(); i++) {
            if (isNamedAlike(items.get(i), item)) {
                items.set(i, item);
                return new Work(items);
            }
        }
        items.add(item);
        return new Work(items);
    }

    private static boolean isNamedAlike(WorkItem one, WorkItem other) {
        return one.name().equalsIgnoreCase(other.name());
    }
}
