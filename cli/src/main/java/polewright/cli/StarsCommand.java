package polewright.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.operations.Workbench;
import polewright.operations.input.BodyFinder;
import polewright.planning.tonight.AlignmentOutcome;
import polewright.planning.tonight.AlignmentStars;
import polewright.report.json.AlignmentJson;
import polewright.report.text.StarFindingWords;
import polewright.sky.body.SkyBody;
import polewright.sky.daylight.Instrument;

@Command(
        name = "stars",
        description = "Choose stars to align on now: which, in which order, and how to find each by eye.")
final class StarsCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Option(names = "--count", paramLabel = "N", description = "How many, 1 to 8. Default: 3; with a camera take more.")
    private int count = AlignmentStars.USUAL;

    @Option(
            names = "--aperture",
            paramLabel = "MM",
            description =
                    "Aperture of the telescope in millimetres; it decides which stars are visible by day. Default:"
                            + " 200.")
    private double apertureMm = StarFindingWords.USUAL_APERTURE_MM;

    @Option(
            names = "--from",
            paramLabel = "BODY",
            converter = BodyFinder.class,
            description = "Where the tube points now. Default: the home position.")
    private @Nullable SkyBody from;

    @Mixin
    private EveningOptions evening;

    @Mixin
    private Output output;

    StarsCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        EveningOptions.Typed typed = evening.typed(workbench);
        Instrument tube = WrongUsage.unlessUsable(() -> Instrument.forFinding(apertureMm));
        AlignmentOutcome outcome = WrongUsage.unlessUsable(
                () -> AlignmentStars.of(typed.evening(), count, tube, Optional.ofNullable(from)));
        if (output.isJson()) {
            output.print(workbench, AlignmentJson.of(outcome, typed.evening().now(), apertureMm));
        } else {
            output.say(
                    workbench,
                    new StarFindingWords(typed.evening(), typed.zone(), apertureMm, from == null).of(outcome, count));
        }
        return 0;
    }
}
