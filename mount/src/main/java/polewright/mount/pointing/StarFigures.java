package polewright.mount.pointing;

import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Centrings as plain arrays, for sums over all of them: radians, and unit vectors east, north, up. */
final class StarFigures {
    private static final int AXES = 3;

    private final List<Centring> centrings;
    private final double[] hourAngle;
    private final double[] declination;
    private final double[] seen;
    private final double[] weight;

    StarFigures(Site site, List<Centring> centrings) {
        this.centrings = centrings;
        int count = centrings.size();
        hourAngle = new double[count];
        declination = new double[count];
        seen = new double[AXES * count];
        weight = new double[count];
        for (int star = 0; star < count; star++) {
            Centring centring = centrings.get(star);
            hourAngle[star] = centring.reading().hourAngle().radians();
            declination[star] = centring.reading().declination().radians();
            Vector3D direction = ForkModel.enu(site, centring.seen());
            seen[AXES * star] = direction.getX();
            seen[AXES * star + 1] = direction.getY();
            seen[AXES * star + 2] = direction.getZ();
            double sigma = centring.sigma().radians();
            weight[star] = 1 / (sigma * sigma);
        }
    }

    int count() {
        return hourAngle.length;
    }

    /** As read from the circle. */
    double hourAngle(int star) {
        return hourAngle[star];
    }

    /** As read from the circle. */
    double declination(int star) {
        return declination[star];
    }

    /** Observed directions, one after the other. */
    double[] seen() {
        return seen;
    }

    /** Reciprocal of the variance of the centring. */
    double weight(int star) {
        return weight[star];
    }

    /** χ² of the stars for a fork. */
    double misfit(ForkDirection tube) {
        double sum = 0;
        for (int star = 0; star < count(); star++) {
            tube.at(hourAngle[star], declination[star]);
            double residual = tube.angleTo(seen, star);
            sum += residual * residual * weight[star];
        }
        return sum;
    }

    /**
     * Sum of the angles between all stars and the direction of an error-free fork with these zeros of its circles,
     * radians; each capped at {@code most}.
     */
    double sumOfAngles(ForkDirection faultless, double hourAngleZero, double declinationZero, double most) {
        double sum = 0;
        for (int star = 0; star < count() && sum < most; star++) {
            faultless.at(hourAngle[star] + hourAngleZero, declination[star] + declinationZero);
            sum += faultless.angleTo(seen, star);
        }
        return sum;
    }

    /** The zero of hour angle from one star alone. */
    double hourAngleZero(int star) {
        Centring centring = centrings.get(star);
        Angle read = isThroughPole(centring)
                ? centring.reading().throughPole().hourAngle()
                : centring.reading().hourAngle();
        return centring.seen().hourAngle().minus(read).wrappedSigned().radians();
    }

    /** The zero of declination from one star alone. */
    double declinationZero(int star) {
        Centring centring = centrings.get(star);
        Angle declination = centring.seen().declination();
        Angle axis = isThroughPole(centring) ? Angle.HALF_TURN.minus(declination) : declination;
        return axis.minus(centring.reading().declination()).wrappedSigned().radians();
    }

    private static boolean isThroughPole(Centring centring) {
        return Math.abs(centring.reading().declination().degrees()) > 90;
    }
}
