package polewright.drawing.frame;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import polewright.drawing.ScaleBar;
import polewright.sky.angle.Angle;

/**
 * What is drawn over a placed frame. Coordinates are points of its picture, from the upper left corner, x to the right
 * and y down.
 *
 * @param name of its file
 * @param at middle of the exposure
 * @param width points across
 * @param height points down
 * @param found number of stars detected
 * @param stars the identified ones, brightest first
 * @param unmatched places of the others, where the picture explains their marks
 * @param pole the elevated celestial pole, to which the axis must point
 * @param axis the mount's axis, if known
 * @param point the angle that a point spans at the centre
 * @param north direction of north at its centre, from +x toward +y, radians
 * @param east direction of east at its centre, from +x toward +y, radians
 */
public record FrameScene(
        String name,
        Optional<Instant> at,
        int width,
        int height,
        int found,
        List<Star> stars,
        List<Place> unmatched,
        Mark pole,
        Optional<Mark> axis,
        Angle point,
        double north,
        double east) {
    // Largest fraction of the width.
    private static final double SCALE_SHARE = 0.25;

    public FrameScene {
        stars = List.copyOf(stars);
        unmatched = List.copyOf(unmatched);
    }

    /** A point of the picture. */
    public record Place(double x, double y) {}

    /**
     * An identified star.
     *
     * @param name if it has one
     */
    public record Star(Place place, double magnitude, Optional<String> name) {}

    /**
     * The pole or the axis.
     *
     * @param label the text next to it
     * @param place its position, also if it is slightly off the picture; otherwise empty
     * @param isOnFrame whether it is on the picture
     * @param edge a point at the picture's edge, on the line to it from the centre
     * @param direction of that line, from +x toward +y, radians
     * @param away its distance from the centre, on the sky
     * @param outline of its 95 % confidence region; empty if that is not known
     */
    public record Mark(
            String label,
            Optional<Place> place,
            boolean isOnFrame,
            Place edge,
            double direction,
            Angle away,
            List<Place> outline) {
        public Mark {
            outline = List.copyOf(outline);
        }
    }

    /** A round length for the scale bar. */
    public ScaleBar scale() {
        return ScaleBar.within(point.times(SCALE_SHARE * width));
    }

    /** The points of an angle at the centre. */
    public double points(Angle angle) {
        return angle.radians() / point.radians();
    }
}
