package polewright.cli;

import java.util.List;
import polewright.alignment.fix.Explanation;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.Mistake;
import polewright.alignment.fix.Step;
import polewright.session.NightState;
import polewright.sky.PlainNumber;

/** What to type to correct the likeliest wrong entry. */
final class MistakeRemedies {
    private MistakeRemedies() {}

    /** One line, or none while nothing is in doubt. */
    static List<String> of(NightState night) {
        if (!(night.fix() instanceof Fix.Dubious)) {
            return List.of();
        }
        return night.fix().explanations().stream()
                .map(Explanation::mistake)
                .flatMap(mistake -> mistake.stream())
                .limit(1)
                .map(mistake -> "If " + said(mistake) + ": " + remedy(mistake))
                .toList();
    }

    private static String said(Mistake mistake) {
        if (mistake instanceof Mistake.TurnMistaken turn) {
            return "at turn #" + turn.seq() + " " + turn.words();
        }
        return mistake instanceof Mistake.SightingMisread sighting
                ? "at sighting #" + sighting.seq() + " " + sighting.words()
                : mistake.words();
    }

    /** The command that corrects it. */
    static String remedy(Mistake mistake) {
        if (mistake instanceof Mistake.TurnMistaken turn) {
            return turn.meant() instanceof Step.Turned meant && meant.azimuthTurns() == 0 && meant.altitudeTurns() == 0
                    ? "polewright undo " + turn.seq()
                    : "polewright turn --instead-of " + turn.seq() + " with the turns that were made";
        } else if (mistake instanceof Mistake.TurnNotLogged missing) {
            return "polewright turn --unlogged-after " + missing.meant().seq() + screw(missing.meant());
        } else if (mistake instanceof Mistake.SightingMisread sighting) {
            return "enter it correctly with --instead-of " + sighting.seq();
        } else if (mistake instanceof Mistake.HabitualMistake habit) {
            return "enter each correctly, the first with --instead-of "
                    + habit.misread().get(0).seq();
        } else if (mistake instanceof Mistake.ClockWrong clock) {
            return "polewright retime 1 --add=" + clock.correction().toMinutes();
        } else if (mistake instanceof Mistake.SiteWrong site) {
            return "polewright site correct --site="
                    + PlainNumber.asTyped(site.meant().latitude().degrees()) + ","
                    + PlainNumber.asTyped(site.meant().longitude().degrees()) + ","
                    + PlainNumber.asTyped(site.meant().heightMetres());
        }
        throw new IllegalStateException("no remedy for " + mistake);
    }

    private static String screw(Step.TurnedUnlogged turned) {
        return turned.isOfBoth() ? "" : turned.azimuthSigma() > 0 ? " --screw azimuth" : " --screw altitude";
    }
}
