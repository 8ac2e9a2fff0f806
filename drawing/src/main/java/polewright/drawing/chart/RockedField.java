package polewright.drawing.chart;

import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.angle.Angle;

/**
 * The view through an optic while the tube, pointing near the pole, is swung in right ascension: stars circle the
 * centre of rotation.
 *
 * @param field true field, edge to edge
 * @param still position of the centre of rotation, (right, up) in the view from the field's centre, radians
 * @param stars brightest first; those in the field at rest
 * @param rocked amplitude of the swing to either side
 */
public record RockedField(Angle field, Vector2D still, List<Star> stars, Angle rocked) {
    public RockedField {
        stars = List.copyOf(stars);
    }

    /**
     * One star.
     *
     * @param fromStill its position at rest, (right, up) in the view from the centre of rotation, radians
     * @param name for the few well-known ones
     */
    public record Star(Vector2D fromStill, double magnitude, Optional<String> name) {}

    /** Position of a star at rest, (right, up) from the field's centre, radians. */
    public Vector2D fromMiddle(Star star) {
        return still.add(star.fromStill());
    }
}
