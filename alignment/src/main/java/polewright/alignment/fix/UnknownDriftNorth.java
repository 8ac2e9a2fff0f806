package polewright.alignment.fix;

import java.util.List;
import polewright.alignment.sighting.DriftModel;
import polewright.alignment.sighting.ReticleNorth;

/**
 * Decides which north a night's drifts were measured along when the entries do not say. An observer aligns the reticle
 * in the same way all night: every time with the sky, or every time with the mount.
 */
final class UnknownDriftNorth {
    // Below this the difference between the two readings does not matter.
    private static final double MATTERS_SIGMAS = 0.3;

    private UnknownDriftNorth() {}

    /**
     * The night with all such drifts read along the north that fits 100 times better; until the odds reach that, each
     * is taken to lie between the two readings.
     */
    static Interpretation considered(CondensedPast past, List<Step> steps, Interpretation betweenThem) {
        if (betweenThem.sightings().stream().noneMatch(sighted -> matters(sighted, betweenThem))) {
            return betweenThem;
        }
        Interpretation bySky = read(past, steps, ReticleNorth.SKY);
        Interpretation byMount = read(past, steps, ReticleNorth.MOUNT);
        if (Math.abs(bySky.cost() - byMount.cost()) < Contradictions.HUNDRED_TO_ONE) {
            return betweenThem;
        }
        return bySky.cost() < byMount.cost() ? bySky : byMount;
    }

    private static boolean matters(Step.Sighted sighted, Interpretation interpretation) {
        return sighted.model() instanceof DriftModel drift
                && drift.isOpen()
                && drift.sigmasBetweenReadings(
                                interpretation.stateFor(sighted).axis().elevatedEnd())
                        > MATTERS_SIGMAS;
    }

    private static Interpretation read(CondensedPast past, List<Step> steps, ReticleNorth north) {
        return Contradictions.weigh(new NightSmoother(
                past, steps.stream().map(step -> read(step, north)).toList()));
    }

    private static Step read(Step step, ReticleNorth north) {
        return step instanceof Step.Sighted sighted && sighted.model() instanceof DriftModel drift && drift.isOpen()
                ? new Step.Sighted(sighted.seq(), sighted.sighting(), drift.readBy(north))
                : step;
    }
}
