package polewright.planning.tonight;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.place.RefractedDirection;

/** The direction from one thing in the sky to another for an observer facing it. */
public enum RelativeDirection {
    ABOVE("above it"),
    ABOVE_RIGHT("to its upper right"),
    RIGHT("to its right"),
    BELOW_RIGHT("to its lower right"),
    BELOW("below it"),
    BELOW_LEFT("to its lower left"),
    LEFT("to its left"),
    ABOVE_LEFT("to its upper left");

    private final String words;

    RelativeDirection(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** The direction from {@code from} to {@code other} along the great circle, in eighths of a turn. */
    static RelativeDirection of(RefractedDirection other, RefractedDirection from) {
        Vector3D right = new Vector3D(from.azimuth().cos(), -from.azimuth().sin(), 0);
        Vector3D up = Vector3D.crossProduct(right, from.enu());
        double clockwise = Math.atan2(Vector3D.dotProduct(other.enu(), right), Vector3D.dotProduct(other.enu(), up));
        return values()[Math.floorMod(Math.round(clockwise / (Math.PI / 4)), 8)];
    }
}
