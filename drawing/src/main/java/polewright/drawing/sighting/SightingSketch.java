package polewright.drawing.sighting;

import polewright.alignment.sighting.BodyBearing;
import polewright.drawing.Palette;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;

/**
 * What to look for and what to measure in a sighting, from the observer's viewpoint: behind the mount, next to it, or
 * at the eyepiece.
 *
 * <p>Signs and zero points are those of the sightings ({@code polewright.alignment.sighting}). Nothing is checked here:
 * a mistaken entry is drawn as entered, so that the person can see the mistake.
 */
public interface SightingSketch {
    /** A complete SVG document, which can also be embedded in a page; its description has the same content in words. */
    String svg(Palette palette);

    /**
     * The compass next to the axis, from above.
     *
     * @param bearing of the axis toward the elevated pole, clockwise from magnetic north
     * @param declination magnetic, east positive
     * @param isNorthern whether the elevated pole is the north pole
     */
    record Compass(Angle bearing, Angle declination, boolean isNorthern) implements SightingSketch {
        @Override
        public String svg(Palette palette) {
            return PlanSketch.svg(this, palette);
        }
    }

    /**
     * The angle to the axis from a shadow, or from the line toward a star, from above.
     *
     * @param body the star, or the body casting the shadow, e.g. {@code the Sun}
     * @param clockwise from the line to the axis
     */
    record FromLine(BodyBearing.Line line, String body, Angle clockwise) implements SightingSketch {
        @Override
        public String svg(Palette palette) {
            return PlanSketch.svg(this, palette);
        }
    }

    /**
     * The wedge's scale and its bubble level, from the side.
     *
     * @param reading at the pointer, 0 to 90°
     * @param isFromZenith whether the scale counts down from the zenith
     */
    record Scale(Angle reading, boolean isFromZenith, boolean isNorthern) implements SightingSketch {
        @Override
        public String svg(Palette palette) {
            return HeightSketch.svg(this, palette);
        }
    }

    /**
     * The altitudes of axis and star, from the side.
     *
     * @param axis altitude at which the axis is drawn
     * @param difference altitude of the axis minus that of the star
     */
    record Difference(String star, Angle axis, Angle difference) implements SightingSketch {
        @Override
        public String svg(Palette palette) {
            return HeightSketch.svg(this, palette);
        }
    }

    /**
     * The field while the tube is swung in right ascension.
     *
     * @param fields from the centre of rotation to the star, in field widths, at most 1
     * @param toward direction of the star from the centre of rotation
     * @param isFacingNorth whether the tube points at the north pole
     */
    record Still(String star, double fields, ClockDirection toward, View view, boolean isFacingNorth)
            implements SightingSketch {
        @Override
        public String svg(Palette palette) {
            return EyepieceSketch.svg(this, palette);
        }
    }

    /**
     * A star that drifts in the field.
     *
     * @param moved distance, in {@code unit}; not negative
     * @param unit the unit, plural: {@code divisions}
     * @param toward direction of the drift, as reported
     * @param points directions of the sky in the view
     */
    record Drift(String star, double moved, String unit, Toward toward, SkyInView points) implements SightingSketch {
        @Override
        public String svg(Palette palette) {
            return EyepieceSketch.svg(this, palette);
        }
    }

    /** Direction of a star's drift. */
    sealed interface Toward {}

    /** Toward a celestial direction. */
    record SkyPoint(boolean north) implements Toward {}

    /** Toward an edge of the view. */
    record Edge(ClockDirection clock) implements Toward {}

    /**
     * A star on the crosshair.
     *
     * @param sigma uncertainty of the centring, on the sky
     */
    record Centred(String star, Angle sigma) implements SightingSketch {
        @Override
        public String svg(Palette palette) {
            return EyepieceSketch.svg(this, palette);
        }
    }
}
