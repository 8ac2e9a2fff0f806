package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import polewright.operations.action.NightBeginning;
import polewright.operations.action.NightBeginning.BeginningWork;
import polewright.session.event.NightEvent;

/** The beginning of a night, in words. */
public final class BeginWords {
    private BeginWords() {}

    /** Where, with which rig, and for what: one sentence. */
    public static String of(NightBeginning.Begun beginning) {
        NightEvent.Begun begun = beginning.begun();
        return "Begun: " + begun.siteName() + " (" + AngleWords.site(begun.site()) + "), "
                + begun.rig().name() + " (" + begun.rig().kind().words() + "), "
                + work(beginning.work(), begun) + ".";
    }

    private static String work(BeginningWork work, NightEvent.Begun begun) {
        return work.work()
                .map(given -> "for " + WorkWords.names(given.items()) + (work.isCarriedOver() ? " as last time" : ""))
                .orElseGet(() -> "allowed " + begun.allowance().words());
    }

    private static final class Reason implements NightBeginning.Unsuitable.Visitor<String> {
        @Override
        public String noAxis(NightBeginning.Unsuitable.NoAxis none) {
            return String.valueOf(ZoneRefusals.of(none.outcome()).getMessage());
        }

        @Override
        public String notHere(NightBeginning.Unsuitable.NotHere reason) {
            return reason.message();
        }
    }

    /** What is remarkable about it; arguments are named in braces. */
    public static List<Remark> remarks(NightBeginning.Begun beginning) {
        List<Remark> remarks = new ArrayList<>();
        NoticeRemarks notices = new NoticeRemarks(beginning.begun());
        beginning.notices().forEach(notice -> remarks.addAll(notice.accept(notices)));
        beginning
                .work()
                .notCarriedOver()
                .ifPresent(why -> remarks.add(
                        Remark.note("The last night's work is not carried over: " + why.accept(new Reason()))));
        beginning
                .skyline()
                .ifPresent(skyline -> remarks.add(Remark.note(
                        "Same skyline as last time, with " + skyline.points().size() + " corners.")));
        ScrewWords.learned(beginning.begun().rig()).ifPresent(line -> remarks.add(Remark.note(line)));
        beginning.notCopied().ifPresent(why -> remarks.add(Remark.note(why)));
        return remarks;
    }
}
