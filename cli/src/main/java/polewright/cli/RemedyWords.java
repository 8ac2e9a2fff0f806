package polewright.cli;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.alignment.fix.Explanation;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.Mistake;
import polewright.operations.night.Remedy;
import polewright.operations.night.WedgeActions;
import polewright.report.text.TypedCommand;
import polewright.session.NightState;

/** How to correct the likeliest wrong entry in a terminal. */
final class RemedyWords {
    private RemedyWords() {}

    /** One line, or none while nothing is in doubt. */
    static List<String> of(NightState night) {
        if (!(night.fix() instanceof Fix.Dubious)) {
            return List.of();
        }
        return night.fix().explanations().stream()
                .map(Explanation::mistake)
                .flatMap(Optional::stream)
                .limit(1)
                .map(mistake -> "If " + mistake.wordsInNight() + ": " + command(mistake, night))
                .toList();
    }

    /** The command that corrects it; otherwise which entries to correct. */
    static String command(Mistake mistake, NightState night) {
        return Remedy.of(mistake, night).map(TypedCommand::of).orElseGet(() -> entries(mistake));
    }

    /** The advice when no single command corrects it. */
    private static String entries(Mistake mistake) {
        if (mistake instanceof Mistake.TurnMistaken turn) {
            return "enter the turns that were made: "
                    + TerminalWording.GENERAL.action(
                            WedgeActions.TURN.id(), Map.of(WedgeActions.INSTEAD_OF.name(), Long.toString(turn.seq())));
        }
        if (mistake instanceof Mistake.SightingMisread sighting) {
            return "enter it again, with --instead-of=" + sighting.seq();
        }
        return mistake instanceof Mistake.HabitualMistake habit
                ? "enter each of "
                        + habit.misread().stream().map(one -> "#" + one.seq()).collect(Collectors.joining(", "))
                        + " again, with --instead-of and its number"
                : "correct the entry";
    }
}
