package polewright.mount.rig;

import java.util.Optional;
import java.util.stream.Stream;

/**
 * Values of a screw that were entered wrongly; those absent are unchanged.
 *
 * @param geometry movement per turn
 * @param clockwise direction of the axis for a clockwise turn
 * @param relativeGainSigma how well {@code geometry} is known, 1 sigma, as a fraction
 * @param handSigmaTurns accuracy of turns made by hand, 1 sigma, turns
 * @param backlashTurns backlash, turns
 * @param finish required direction of the last turn
 */
public record ScrewCorrection(
        Optional<ScrewGeometry> geometry,
        Optional<ScrewSense> clockwise,
        Optional<Double> relativeGainSigma,
        Optional<Double> handSigmaTurns,
        Optional<Double> backlashTurns,
        Optional<FinishSense> finish) {
    /** No correction. */
    public static final ScrewCorrection NONE = new ScrewCorrection(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    /** Only the direction of a clockwise turn. */
    public static ScrewCorrection clockwise(ScrewSense sense) {
        return new ScrewCorrection(
                Optional.empty(),
                Optional.of(sense),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** Whether it corrects nothing. */
    public boolean isNone() {
        return Stream.of(geometry, clockwise, relativeGainSigma, handSigmaTurns, backlashTurns, finish)
                .allMatch(Optional::isEmpty);
    }

    /** The corrected screw. Its direction is no longer assumed once corrected or confirmed. */
    public Screw appliedTo(Screw screw) {
        return new Screw(
                geometry.orElse(screw.geometry()),
                clockwise.orElse(screw.clockwise()),
                relativeGainSigma.orElse(screw.relativeGainSigma()),
                handSigmaTurns.orElse(screw.handSigmaTurns()),
                backlashTurns.orElse(screw.backlashTurns()),
                finish.orElse(screw.finish()),
                screw.isSenseAssumed() && clockwise.isEmpty());
    }
}
