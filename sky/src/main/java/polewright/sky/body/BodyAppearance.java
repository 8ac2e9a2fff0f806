package polewright.sky.body;

import polewright.sky.angle.Angle;
import polewright.sky.place.ApparentPlace;

/**
 * A body of the solar system as it appears from a site.
 *
 * @param body the body
 * @param place topocentric apparent place of its centre
 * @param distanceAu from the observer to the body when its light left it, astronomical units
 */
public record BodyAppearance(SolarSystemBody body, ApparentPlace place, double distanceAu) {
    /** IAU 2012 Resolution B2, exact. */
    private static final double KM_PER_AU = 149_597_870.700;

    public double distanceKm() {
        return distanceAu * KM_PER_AU;
    }

    /** Angular semidiameter of the disc; equatorial where the body is flattened. */
    public Angle semiDiameter() {
        return new Angle(Math.asin(body.equatorialRadiusKm() / distanceKm()));
    }
}
