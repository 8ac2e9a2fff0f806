package polewright.simulation.camera;

import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/** Attitudes for a camera with a given pointing: rotations from camera axes to ENU, to be applied to vectors. */
public final class CameraAim {
    // Large compared with rounding, small compared with the curvature of refraction.
    private static final double STEP_RAD = 1e-5;

    private CameraAim() {}

    /**
     * Pointing at an apparent (refracted) direction over the horizon.
     *
     * @param roll how far the picture's up tilts from the zenith toward the picture's right, for an unmirrored
     *     picture
     */
    public static Rotation at(RefractedDirection seen, Angle roll) {
        Vector3D front = seen.enu();
        // Toward the zenith; at the zenith itself, toward south, as if the camera had been raised from the north.
        Vector3D toward = Math.abs(front.getZ()) > 1 - 1e-12 ? Vector3D.MINUS_J : Vector3D.PLUS_K;
        Vector3D level = square(toward, front);
        Vector3D right = front.crossProduct(level);
        return looking(front, new Vector3D(roll.cos(), level, roll.sin(), right));
    }

    /**
     * Pointing at an ICRS place, with its image in the centre of the picture.
     *
     * @param upPositionAngle position angle of the picture's up there, from ICRS north through east
     */
    public static Rotation at(CatalogueStar star, Angle upPositionAngle, ObservingMoment moment) {
        // The place at the epoch of the observation, where the position angle is meant.
        CatalogueStar here = moment.catalogueDirection(moment.apparent(star));
        double ra = here.rightAscension().radians();
        double dec = here.declination().radians();
        Vector3D north = new Vector3D(ra, dec + Math.PI / 2);
        Vector3D east = new Vector3D(ra + Math.PI / 2, 0);
        Vector3D up = new Vector3D(upPositionAngle.cos(), north, upPositionAngle.sin(), east);
        Vector3D above = new Vector3D(1, new Vector3D(ra, dec), STEP_RAD, up);
        CatalogueStar beside = CatalogueStar.fixed(new Angle(above.getAlpha()), new Angle(above.getDelta()));
        Vector3D front = seen(star, moment);
        return looking(front, square(seen(beside, moment), front));
    }

    private static Vector3D seen(CatalogueStar star, ObservingMoment moment) {
        return moment.refracted(moment.apparent(star)).enu();
    }

    private static Vector3D square(Vector3D toward, Vector3D front) {
        return toward.subtract(front.scalarMultiply(toward.dotProduct(front))).normalize();
    }

    private static Rotation looking(Vector3D front, Vector3D up) {
        return new Rotation(Vector3D.PLUS_K, Vector3D.MINUS_J, front, up);
    }
}
