package polewright.alignment.fix;

import java.util.List;
import polewright.alignment.sighting.DriftModel;
import polewright.alignment.sighting.ReticleNorth;

/**
 * Along which north a night's drifts were read, where nothing says so. A person sets a reticle in one way all night: all by
 * the sky, or all by the mount.
 */
final class UnknownDriftNorth {
    // Nearer the pole than that the two are the same to anyone.
    private static final double MATTERS_SIGMAS = 0.3;

    private UnknownDriftNorth() {}

    /**
     * The night with all such drifts read along the north that fits better by odds of a hundred to one; until then each is
     * held to lie between the two readings.
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

    private static boolean matters(Step.Sighted sighted, Interpretation account) {
        return sighted.model() instanceof DriftModel drift
                && drift.isOpen()
                && drift.sigmasBetweenReadings(account.stateFor(sighted).axis().elevatedEnd()) > MATTERS_SIGMAS;
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
