package polewright.report.text;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.alignment.fix.Explanation;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.Mistake;
import polewright.operations.night.Remedy;
import polewright.session.NightState;

/** How to correct the likeliest wrong entry in a terminal. */
public final class RemedyWords {
    private RemedyWords() {}

    /** One line, or none while nothing is in doubt. */
    public static List<String> of(NightState night) {
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
        return Remedy.of(mistake, night).map(RemedyWords::typed).orElseGet(() -> entries(mistake));
    }

    private static String typed(Remedy remedy) {
        return TypedCommand.of(remedy.action().command(), remedy.action().arguments(), remedy.typed());
    }

    private static String entries(Mistake mistake) {
        return mistake instanceof Mistake.HabitualMistake habit
                ? "correct each of "
                        + habit.misread().stream().map(one -> "#" + one.seq()).collect(Collectors.joining(", "))
                : "correct the entry";
    }
}
