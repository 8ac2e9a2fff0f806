package polewright.mount.pointing;

import java.util.List;
import java.util.Set;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import polewright.mount.rig.MountKind;
import polewright.sky.place.Site;

/**
 * Fits a mount's errors to centred stars: the likeliest terms of the exact model, each with its usual size as a prior
 * (Gauss–Newton on terms in units of their usual sizes).
 */
public final class PointingFit {
    private PointingFit() {}

    /** For a fork on a wedge. */
    public static PointingOutcome of(Site site, List<Centring> centrings) {
        return of(MountKind.FORK_ON_WEDGE, site, centrings);
    }

    /** For any mount with a polar axis; terms that such a mount cannot have stay zero. */
    public static PointingOutcome of(MountKind kind, Site site, List<Centring> centrings) {
        return centrings.isEmpty()
                ? new PointingOutcome.NoStars()
                : new PointingOutcome.Fitted(model(PointingTerm.of(kind), site, centrings));
    }

    /** The model; before any star, the priors. */
    static PointingModel model(Set<PointingTerm> possible, Site site, List<Centring> centrings) {
        if (centrings.isEmpty()) {
            return PointingModel.unknown(possible, site);
        }
        return modelUnder(Double.POSITIVE_INFINITY, possible, site, centrings);
    }

    /**
     * The same for one star or more; a fit whose misfit will stay above {@code misfitLimit} is not iterated to
     * convergence.
     */
    static PointingModel modelUnder(
            double misfitLimit, Set<PointingTerm> possible, Site site, List<Centring> centrings) {
        return new PointingDescent(possible, site, centrings).settled(misfitLimit);
    }

    /**
     * Derivatives of the direction on the sky with respect to each term: rows west and north, columns in the order of
     * the terms.
     */
    static RealMatrix design(Site site, TermValues about, MountReading reading) {
        SkySlopes slopes = new SkySlopes(site, new ForkGeometry(site, about.radians()));
        slopes.at(reading.hourAngle().radians(), reading.declination().radians());
        return MatrixUtils.createRealMatrix(new double[][] {slopes.west(), slopes.north()});
    }
}
