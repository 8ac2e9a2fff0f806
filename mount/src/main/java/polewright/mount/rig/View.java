package polewright.mount.rig;

import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.angle.Angle;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/**
 * The image in an eyepiece or finder.
 *
 * @param orientation erect, inverted or mirror-reversed
 * @param turned rotation of the whole view, clockwise from having the zenith side at the top (or, inverted, at the
 *     bottom): a star diagonal turned to the side rotates the view with it
 */
public record View(Orientation orientation, Angle turned) {
    public static final View NAKED_EYE = new View(Orientation.ERECT, Angle.ZERO);

    public static View of(Orientation orientation) {
        return new View(orientation, Angle.ZERO);
    }

    /**
     * From the sky to the view.
     *
     * @param sky (right, up) as seen by the naked eye facing that way, up toward the zenith; any unit
     * @return (right, up) in the view, same unit
     */
    public Vector2D fromSky(Vector2D sky) {
        return turnClockwise(flip(sky), turned.radians());
    }

    /** From the view to the sky; the inverse of {@link #fromSky}. */
    public Vector2D toSky(Vector2D inView) {
        return flip(turnClockwise(inView, -turned.radians()));
    }

    public static void write(FieldWriter out, View view) {
        out.word("orientation", view.orientation).angle("turned_deg", view.turned);
    }

    public static View read(FieldReader in) {
        return new View(in.choice("orientation", Orientation.class), in.angle("turned_deg", Angle.ZERO));
    }

    // Each of the three is its own inverse.
    private Vector2D flip(Vector2D v) {
        return switch (orientation) {
            case ERECT -> v;
            case INVERTED -> v.negate();
            case MIRRORED -> new Vector2D(-v.getX(), v.getY());
        };
    }

    private static Vector2D turnClockwise(Vector2D v, double angleRad) {
        double cos = Math.cos(angleRad);
        double sin = Math.sin(angleRad);
        return new Vector2D(cos * v.getX() + sin * v.getY(), -sin * v.getX() + cos * v.getY());
    }
}
