package polewright.drawing.chart;

import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.angle.Angle;

/**
 * What an optic shows while the tube, set near the pole, is rocked in right ascension: stars that go round the point that
 * stays still.
 *
 * @param field true field, edge to edge
 * @param still where the still point is, (right, up) in the view from the field's middle, radians
 * @param stars brightest first; those that are in the field at rest
 * @param rocked how far to either side the tube is rocked
 */
public record RockedField(Angle field, Vector2D still, List<Star> stars, Angle rocked) {
    public RockedField {
        stars = List.copyOf(stars);
    }

    /**
     * One star.
     *
     * @param fromStill where it stands at rest, (right, up) in the view from the still point, radians
     * @param name of the few that a person would know there
     */
    public record Star(Vector2D fromStill, double magnitude, Optional<String> name) {}

    /** Where a star stands at rest, (right, up) from the field's middle, radians. */
    public Vector2D fromMiddle(Star star) {
        return still.add(star.fromStill());
    }
}
