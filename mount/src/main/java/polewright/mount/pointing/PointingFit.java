package polewright.mount.pointing;

import java.util.List;
import java.util.Set;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import polewright.mount.rig.MountKind;
import polewright.sky.place.Site;

/**
 * Finds a mount's errors from stars that were centred: the likeliest terms of the exact model, each held to its usual size
 * as far as the stars leave it open (Gauss–Newton on terms in units of their usual sizes).
 */
public final class PointingFit {
    private PointingFit() {}

    /** For a fork on a wedge. */
    public static PointingOutcome of(Site site, List<Centring> centrings) {
        return of(MountKind.FORK_ON_WEDGE, site, centrings);
    }

    /** For any mount with a polar axis: terms that such a mount cannot have stay nothing. */
    public static PointingOutcome of(MountKind kind, Site site, List<Centring> centrings) {
        return centrings.isEmpty()
                ? new PointingOutcome.NoStars()
                : new PointingOutcome.Fitted(model(PointingTerm.of(kind), site, centrings));
    }

    /** The same; before any star what is usual. */
    static PointingModel model(Set<PointingTerm> possible, Site site, List<Centring> centrings) {
        if (centrings.isEmpty()) {
            return PointingModel.unknown(possible, site);
        }
        return modelUnder(Double.POSITIVE_INFINITY, possible, site, centrings);
    }

    /** The same for one star or more; a misfit that will stay above {@code hopeless} is not lowered to the end. */
    static PointingModel modelUnder(double hopeless, Set<PointingTerm> possible, Site site, List<Centring> centrings) {
        return new PointingDescent(possible, site, centrings).settled(hopeless);
    }

    /** How the place on the sky moves with each term: rows west and north, columns in the order of the terms. */
    static RealMatrix design(Site site, TermValues about, MountReading reading) {
        SkySlopes slopes = new SkySlopes(site, new ForkGeometry(site, about.radians()));
        slopes.at(reading.hourAngle().radians(), reading.declination().radians());
        return MatrixUtils.createRealMatrix(new double[][] {slopes.west(), slopes.north()});
    }
}
