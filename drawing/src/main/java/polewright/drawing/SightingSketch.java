package polewright.drawing;

import polewright.alignment.sighting.BodyBearing;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;

/**
 * What to look for at a sighting and what to measure, in the view of whoever takes it: standing behind the mount, beside
 * it, or with an eye at the eyepiece.
 *
 * <p>Signs and zero points are those of the sightings ({@code polewright.alignment.sighting}); nothing is judged here, so what
 * is drawn may well be a slip that the person sees in the picture.
 */
public sealed interface SightingSketch {
    /** A complete SVG document, also fit to be put inside a page; its description says the same in words. */
    default String svg(Palette palette) {
        if (this instanceof Compass compass) {
            return PlanSketch.svg(compass, palette);
        }
        if (this instanceof FromLine line) {
            return PlanSketch.svg(line, palette);
        }
        if (this instanceof Scale scale) {
            return HeightSketch.svg(scale, palette);
        }
        if (this instanceof Difference difference) {
            return HeightSketch.svg(difference, palette);
        }
        if (this instanceof Still still) {
            return EyepieceSketch.svg(still, palette);
        }
        if (this instanceof Drift drift) {
            return EyepieceSketch.svg(drift, palette);
        }
        return EyepieceSketch.svg((Centred) this, palette);
    }

    /**
     * The compass beside the axis, from above.
     *
     * @param bearing of the axis, toward the pole that is up, from magnetic north clockwise
     * @param declination magnetic, east positive
     * @param isNorthern whether the north pole is the one that is up
     */
    record Compass(Angle bearing, Angle declination, boolean isNorthern) implements SightingSketch {}

    /**
     * The angle from a shadow, or from the line toward a star, to the axis, from above.
     *
     * @param body the star, or what casts the shadow, e.g. {@code the Sun}
     * @param clockwise from the line to the axis
     */
    record FromLine(BodyBearing.Line line, String body, Angle clockwise) implements SightingSketch {}

    /**
     * The wedge's scale and its bubble, from the side.
     *
     * @param reading what stands at the pointer, 0 to 90°
     * @param isFromZenith whether the scale counts down from the zenith
     */
    record Scale(Angle reading, boolean isFromZenith, boolean isNorthern) implements SightingSketch {}

    /**
     * The heights of axis and star, from the side.
     *
     * @param axis altitude at which the axis is drawn
     * @param difference altitude of the axis minus that of the star
     */
    record Difference(String star, Angle axis, Angle difference) implements SightingSketch {}

    /**
     * The field rocked in right ascension.
     *
     * @param fields from the still point to the star, in field widths, at most 1
     * @param toward where the star stands from the still point
     * @param isFacingNorth whether it is the north pole that one looks toward
     */
    record Still(String star, double fields, ClockDirection toward, View view, boolean isFacingNorth)
            implements SightingSketch {}

    /**
     * A star that drifts in the field.
     *
     * @param moved how far, in {@code unit}; not negative
     * @param unit what is counted, plural: {@code divisions}
     * @param toward which way it went, as it is told
     * @param points where the points of the sky are in the view
     */
    record Drift(String star, double moved, String unit, Toward toward, SkyInView points) implements SightingSketch {}

    /** Which way a star went. */
    sealed interface Toward {}

    /** As the sky has it. */
    record SkyPoint(boolean north) implements Toward {}

    /** Toward an edge of the view. */
    record Edge(ClockDirection clock) implements Toward {}

    /**
     * A star on the cross.
     *
     * @param sigma how far off it may be, on the sky
     */
    record Centred(String star, Angle sigma) implements SightingSketch {}
}
