package polewright.operations.picture;

import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A direction to mark on a frame.
 *
 * @param direction ICRS unit vector of its place among the frame's stars
 * @param outline of its 95 % confidence region; empty if that is not known
 * @param label the text next to it
 */
public record PointMark(Vector3D direction, List<Vector3D> outline, String label) {
    public PointMark {
        outline = List.copyOf(outline);
    }
}
