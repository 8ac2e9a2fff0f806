package polewright.operations.picture;

import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A direction to show on a frame.
 *
 * @param kind what it is
 * @param direction ICRS unit vector of where it falls among the frame's stars
 * @param outline of the region that it may lie in, 95 %; empty where that is not known
 * @param label what to write beside it
 */
public record PointMark(Kind kind, Vector3D direction, List<Vector3D> outline, String label) {
    public PointMark {
        outline = List.copyOf(outline);
    }

    /** What is shown. */
    public enum Kind {
        POLE,
        AXIS
    }
}
