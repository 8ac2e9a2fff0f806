package polewright.alignment.camera;

import java.time.Duration;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.time.SiderealRate;

/** Turns about the axis, and how far the sky turns meanwhile. Westward positive, as hour angle is counted. */
final class SiderealTurn {
    private SiderealTurn() {}

    /** How far the sky turns, westward, in this time. */
    static Angle during(Duration time) {
        return SiderealRate.during(time.getSeconds() + time.getNano() * 1e-9);
    }

    /**
     * How far a rotation of ENU turns westward about an axis, −½ to ½ turn. A rotation that is not quite about the axis
     * counts with the part that is (its twist).
     *
     * @param northernEnd ENU unit vector of the axis's northern end
     */
    static Angle westward(Rotation inEnu, Vector3D northernEnd) {
        // Hipparchus keeps the conjugate quaternion. Seen along the northern end from outside the sky turns clockwise.
        double alongNorth = -(inEnu.getQ1() * northernEnd.getX()
                + inEnu.getQ2() * northernEnd.getY()
                + inEnu.getQ3() * northernEnd.getZ());
        return new Angle(-2 * Math.atan2(alongNorth, inEnu.getQ0())).wrappedSigned();
    }
}
