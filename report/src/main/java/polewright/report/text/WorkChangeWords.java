package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.operations.action.NightEntry;
import polewright.session.NightState;
import polewright.session.event.NightEvent;

/** A change of tonight's work, in words. */
public final class WorkChangeWords {
    private WorkChangeWords() {}

    /** The zone of the work that was set; empty if a plain limit was set. */
    public static Optional<WorkZone> zone(NightEntry.Logged entry) {
        Allowance allowance = entry.after().allowance();
        return allowance instanceof WorkZone zone && entry.last().event() instanceof NightEvent.WorkSet
                ? Optional.of(zone)
                : Optional.empty();
    }

    /** The items that changed, and the zone, a line each. */
    public static List<Line> lines(NightEvent.WorkSet set, NightEntry.Logged entry) {
        List<WorkItem> before = items(entry.before());
        List<Line> lines = new ArrayList<>();
        for (WorkItem item : set.work().items()) {
            if (!before.contains(item)) {
                lines.add(Tag.WORK.line(WorkWords.of(item)
                        + before.stream()
                                .filter(old -> isNamedAlike(item, old))
                                .map(old -> " In place of '" + old.name() + "'.")
                                .collect(Collectors.joining())));
            }
        }
        zone(entry).ifPresent(zone -> lines.addAll(ZoneWords.of(zone)));
        return lines;
    }

    /** What the zone leaves out, and what tonight is no longer for. */
    static List<Remark> remarks(NightEvent.WorkSet set, NightEntry.Logged entry) {
        List<Remark> remarks = new ArrayList<>();
        zone(entry)
                .ifPresent(zone ->
                        remarks.addAll(ZoneNotes.of(zone, entry.before().begun().rig())));
        List<WorkItem> gone = items(entry.before()).stream()
                .filter(old -> set.work().items().stream().noneMatch(item -> isNamedAlike(item, old)))
                .toList();
        if (!gone.isEmpty()) {
            remarks.add(Remark.note("Tonight is no longer for " + WorkWords.names(gone) + "."));
        }
        return remarks;
    }

    /** The work that a plain limit sets aside. */
    static List<Remark> noLongerUsed(NightEntry.Logged entry) {
        List<WorkItem> before = items(entry.before());
        return before.isEmpty() ? List.of() : List.of(Remark.note("No longer used: " + WorkWords.names(before) + "."));
    }

    private static List<WorkItem> items(NightState night) {
        return night.work().map(Work::items).orElse(List.of());
    }

    private static boolean isNamedAlike(WorkItem one, WorkItem other) {
        return one.name().equalsIgnoreCase(other.name());
    }
}
