package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.place.Site;

/** Cautions and notes about an event that was just logged, apart from its time. */
public final class EventRemarks {
    private EventRemarks() {}

    /**
     * Cautions about the Sun come first.
     *
     * @param before the night without it
     */
    public static List<Remark> of(NightEvent event, NightState before) {
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
