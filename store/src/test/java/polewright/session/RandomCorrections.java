package polewright.session;

import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import polewright.mount.rig.Rig;
import polewright.mount.rig.RigCorrection;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewCorrection;

/** Corrections of a rig: all of it, or some values of every sort. */
final class RandomCorrections {
    private final Random random;
    private final RandomRigs rigs;

    RandomCorrections(RandomValues values, RandomRigs rigs) {
        this.random = values.random();
        this.rigs = rigs;
    }

    RigCorrection correction() {
        Rig rig = rigs.rig();
        if (random.nextInt(3) == 0) {
            return new RigCorrection.AnotherRig(rig);
        }
        return new RigCorrection.Figures(
                screw(rig.azimuthScrew()),
                screw(rig.altitudeScrew()),
                // At least one value.
                Optional.of(rig.levelSigma()),
                maybe(rig::clampSigma),
                maybe(rig::optics),
                maybe(rig::cameras),
                maybe(rig::screwOrder),
                maybe(rig::drive),
                maybe(rig::travel));
    }

    private ScrewCorrection screw(Screw screw) {
        return new ScrewCorrection(
                maybe(screw::geometry),
                maybe(screw::clockwise),
                maybe(screw::relativeGainSigma),
                maybe(screw::handSigmaTurns),
                maybe(screw::backlashTurns),
                maybe(screw::finish));
    }

    private <T> Optional<T> maybe(Supplier<T> figure) {
        return random.nextBoolean() ? Optional.of(figure.get()) : Optional.empty();
    }
}
