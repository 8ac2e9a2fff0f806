package polewright.report.text;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import polewright.operations.action.NightEntry;
import polewright.session.EntryTimeCheck;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.place.Site;

/** Cautions and notes about events that were just logged. */
public final class EventRemarks {
    private EventRemarks() {}

    /** About everything that was entered together; arguments and actions are named in braces. */
    public static List<Remark> of(NightEntry.Logged entry) {
        Set<Remark> remarks = new LinkedHashSet<>();
        entry.events().forEach(logged -> remarks.addAll(of(logged.event(), entry.before())));
        entry.events()
                .forEach(logged -> EntryTimeCheck.of(entry.before(), logged.event(), entry.at(), entry.now())
                        .forEach(finding -> remarks.add(Remark.note(EntryTimeWords.of(finding)))));
        NoticeRemarks notices = new NoticeRemarks(entry.before().begun());
        entry.notices().forEach(notice -> remarks.addAll(notice.accept(notices)));
        if (entry.last().event() instanceof NightEvent.WorkSet set) {
            remarks.addAll(WorkChangeWords.remarks(set, entry));
        } else if (entry.last().event() instanceof NightEvent.AllowanceSet) {
            remarks.addAll(WorkChangeWords.noLongerUsed(entry));
        }
        return List.copyOf(remarks);
    }

    /**
     * Cautions about the Sun come first.
     *
     * @param before the night without it
     */
    private static List<Remark> of(NightEvent event, NightState before) {
        Site site = before.begun().site();
        List<Remark> remarks = new ArrayList<>(SunCaution.of(event, site));
        remarks.addAll(FrameWords.notes(event, site));
        remarks.addAll(MountNotes.of(event, before));
        if (event instanceof NightEvent.SightingSkipped skipped) {
            remarks.add(Remark.note(SkipWords.consequence(skipped.skip())));
        }
        return remarks;
    }
}
