package polewright.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewCorrection;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** Corrections of what was entered wrongly for one screw. */
abstract class ScrewOptions {
    private static final double LEAST_FACTOR = 0.01;
    private static final double MOST_FACTOR = 100;

    /** The options as typed; each screw has them under its own names. */
    record Given(
            String screw,
            @Nullable ScrewSense clockwise,
            boolean isReversed,
            @Nullable Double gain,
            @Nullable Double perTurnDeg,
            @Nullable Double play) {
        boolean isAny() {
            return clockwise != null || isReversed || gain != null || perTurnDeg != null || play != null;
        }
    }

    abstract Given given();

    final boolean isAnyGiven() {
        return given().isAny();
    }

    final ScrewCorrection correction(Screw entered) {
        Given typed = given();
        if (typed.clockwise() != null && typed.isReversed()) {
            throw new WrongUsage("where the " + typed.screw() + " screw goes is given twice. Give --" + typed.screw()
                    + "-clockwise or --" + typed.screw() + "-reversed.");
        }
        if (typed.gain() != null && typed.perTurnDeg() != null) {
            throw new WrongUsage("how far the " + typed.screw() + " screw goes is given twice. Give --" + typed.screw()
                    + "-gain or --" + typed.screw() + "-per-turn.");
        }
        Optional<ScrewSense> sense = typed.isReversed()
                ? Optional.of(entered.clockwise().reversed())
                : Optional.ofNullable(typed.clockwise());
        return new ScrewCorrection(
                geometry(typed, entered),
                sense,
                Optional.empty(),
                Optional.empty(),
                Optional.ofNullable(typed.play()),
                Optional.empty());
    }

    private static Optional<ScrewGeometry> geometry(Given typed, Screw entered) {
        Double factor = typed.gain();
        if (factor != null) {
            if (!(factor >= LEAST_FACTOR && factor <= MOST_FACTOR)) {
                throw new InputRefused(
                        PlainNumber.asTyped(factor) + " times as far per turn is outside 0.01 to 100",
                        "1 is as entered, 0.5 is half as far");
            }
            return Optional.of(entered.geometry().scaled(factor));
        }
        return Optional.ofNullable(typed.perTurnDeg())
                .map(degrees -> new ScrewGeometry.DegreesPerTurn(Angle.ofDegrees(degrees)));
    }
}
