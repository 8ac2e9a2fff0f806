package polewright.mount.rig;

import java.util.Optional;
import java.util.stream.Stream;

/**
 * Figures of a screw that were entered wrongly; each that is absent stays as it is.
 *
 * @param geometry how far a turn goes
 * @param clockwise where a clockwise turn takes the axis
 * @param relativeGainSigma how well {@code geometry} is known, 1 sigma, as a fraction
 * @param handSigmaTurns how exactly a hand makes a turn, 1 sigma, turns
 * @param backlashTurns play, turns
 * @param finish which way it is to be turned last
 */
public record ScrewCorrection(
        Optional<ScrewGeometry> geometry,
        Optional<ScrewSense> clockwise,
        Optional<Double> relativeGainSigma,
        Optional<Double> handSigmaTurns,
        Optional<Double> backlashTurns,
        Optional<FinishSense> finish) {
    /** Everything stays. */
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

    /** The screw with these figures. Its sense is no longer assumed once it is corrected, or confirmed. */
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
