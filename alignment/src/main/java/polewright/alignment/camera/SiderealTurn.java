package polewright.alignment.camera;

import java.time.Duration;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.time.SiderealRate;

/** Rotations about the axis and of the sky. Westward positive, like hour angle. */
final class SiderealTurn {
    private SiderealTurn() {}

    /** The sky's rotation in this time, westward. */
    static Angle during(Duration time) {
        return SiderealRate.during(time.getSeconds() + time.getNano() * 1e-9);
    }

    /**
     * The westward part of an ENU rotation about an axis, −½ to ½ turn. A rotation that is not exactly about the axis
     * counts with its twist.
     *
     * @param northernEnd ENU unit vector of the axis's northern end
     */
    static Angle westward(Rotation inEnu, Vector3D northernEnd) {
        // Hipparchus stores the conjugate quaternion. Seen along the northern end from outside, the sky turns
        // clockwise.
        double alongNorth = -(inEnu.getQ1() * northernEnd.getX()
                + inEnu.getQ2() * northernEnd.getY()
                + inEnu.getQ3() * northernEnd.getZ());
        return new Angle(-2 * Math.atan2(alongNorth, inEnu.getQ0())).wrappedSigned();
    }
}
