package polewright.report.text;

import polewright.operations.action.EntryNotice;
import polewright.operations.action.LooksMistaken.Doubt;

/** Why an entry looks like a mistake, and what to do if it is one. */
public final class DoubtWords {
    private DoubtWords() {}

    /** Two sentences, which may name arguments in braces. */
    public static String of(Doubt doubt) {
        if (doubt instanceof Doubt.FarOff far) {
            return sentences(
                    ImplausibleReadingWords.what(far.sighting(), far.reading(), far.site()),
                    ImplausibleReadingWords.check(far.reading()));
        }
        if (doubt instanceof EntryNotice.OddSite odd) {
            return SiteWords.sentences(odd.site(), odd.zone().getId());
        }
        Doubt.ManyTurns many = (Doubt.ManyTurns) doubt;
        return sentences(
                Fractions.turns(many.turns()) + " of the " + many.screw() + " screw is more than most wedges have",
                "check the number");
    }

    private static String sentences(String what, String check) {
        return what + ". " + Character.toUpperCase(check.charAt(0)) + check.substring(1) + ".";
    }
}
