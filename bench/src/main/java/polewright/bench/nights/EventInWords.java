package polewright.bench.nights;

import java.util.Locale;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.fix.AxisState;
import polewright.session.event.EventKind;
import polewright.session.event.NightEvent;
import polewright.simulation.RehearsedNight;

/** One event of an advised night in a few words: what was done, the fix then, and the next advice. */
final class EventInWords {
    private EventInWords() {}

    static String of(RehearsedNight.Moment moment) {
        AxisState state = moment.night().fix().state();
        return String.format(
                Locale.ROOT,
                "%-24s fix %.1f' +- %.1f east, %.1f' +- %.1f up; P %.3f; next: %s",
                done(moment.event().event()),
                state.offset().east().arcminutes(),
                state.offsetCovariance().sigmaEast().arcminutes(),
                state.offset().up().arcminutes(),
                state.offsetCovariance().sigmaUp().arcminutes(),
                moment.night().advice().probabilityNow(),
                next(moment.night().advice()));
    }

    private static String done(NightEvent event) {
        if (event instanceof NightEvent.ScrewsTurned turned) {
            return String.format(Locale.ROOT, "turned %.4f, %.4f", turned.azimuthTurns(), turned.altitudeTurns());
        }
        return event instanceof NightEvent.SightingTaken taken
                ? taken.sighting().kind()
                : EventKind.of(event).name().toLowerCase(Locale.ROOT);
    }

    private static String next(Advice advice) {
        if (advice instanceof Advice.TakeSighting take) {
            return take.kind().name().toLowerCase(Locale.ROOT)
                    + (take.watch().isZero() ? "" : " " + take.watch().toMinutes() + " min")
                    + " (" + take.reason() + ")";
        }
        if (advice instanceof Advice.TurnScrews turn) {
            StringBuilder words = new StringBuilder(turn.loosenFirst() ? "loosen," : "");
            for (ScrewTurn one : turn.turns()) {
                words.append(String.format(
                        Locale.ROOT,
                        " %s %.4f back %.4f",
                        one.screw().name().toLowerCase(Locale.ROOT),
                        one.clockwiseTurns(),
                        one.backTurns()));
            }
            return String.format(Locale.ROOT, "%s, for P %.3f", words.toString().strip(), turn.probabilityAfter());
        }
        return advice.getClass().getSimpleName();
    }
}
