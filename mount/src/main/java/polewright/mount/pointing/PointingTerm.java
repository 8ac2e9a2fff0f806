package polewright.mount.pointing;

import java.util.EnumSet;
import java.util.Set;
import polewright.mount.rig.MountKind;
import polewright.sky.angle.Angle;

/**
 * One cause of a difference between a mount's reading and the tube's direction, on the sky, true minus read.
 *
 * <p>The usual sizes are 1 sigma of an amateur's fork before anything is known about it (common practice): its zeros
 * are arbitrary, and its axis is that of a mount not yet aligned.
 */
public enum PointingTerm {
    /** Zero of hour angle: positive if the tube points west of its reading. */
    HOUR_ANGLE_ZERO(0, "zero of hour angle", 1800),
    /** Zero of declination: positive if the tube points north of its reading. */
    DECLINATION_ZERO(1, "zero of declination", 600),
    /** The tube is not perpendicular to the declination axis: positive if it points east. */
    CONE(2, "cone error", 10),
    /**
     * The declination axis is not perpendicular to the polar axis: positive if its east end at hour angle 0 tilts
     * north.
     */
    AXES_NOT_SQUARE(3, "axes not square", 5),
    /** Offset of the polar axis east of the pole, on the sky. */
    AXIS_EAST(4, "axis east of the pole", 180),
    /** Offset of the polar axis above the pole, on the sky. */
    AXIS_UP(5, "axis above the pole", 180),
    /** Flexure of the fork with its arms level: declination changes with the cosine of hour angle. */
    FORK_SAG_FLAT(6, "fork sag, arms level", 1),
    /** Sideways flexure of the fork with one arm above the other, with the sine of hour angle. */
    FORK_SAG_SIDE(7, "fork sag, one arm up", 1),
    /** Flexure of the tube, proportional to the cosine of altitude. */
    TUBE_SAG(8, "tube sag", 1);

    private final int column;
    private final String words;
    private final double usualSizeRad;

    PointingTerm(int column, String words, double usualSizeArcmin) {
        this.column = column;
        this.words = words;
        usualSizeRad = Angle.ofArcminutes(usualSizeArcmin).radians();
    }

    /** Its index among all terms, from 0, in vectors and matrices. */
    int column() {
        return column;
    }

    /** Prior standard deviation, radians. */
    double usualSizeRad() {
        return usualSizeRad;
    }

    public String words() {
        return words;
    }

    /**
     * The terms that a kind of mount can have. Only a fork carries its tube between arms that sag. The other side of a
     * German mount is a reading through the pole, so its cone error and non-perpendicular axes are the same terms as a
     * fork's.
     */
    public static Set<PointingTerm> of(MountKind kind) {
        boolean isFork = kind == MountKind.FORK_ON_WEDGE || kind == MountKind.FORK_UPRIGHT;
        EnumSet<PointingTerm> terms = EnumSet.allOf(PointingTerm.class);
        if (!isFork) {
            terms.removeAll(EnumSet.of(FORK_SAG_FLAT, FORK_SAG_SIDE));
        }
        return terms;
    }

    /** Prior standard deviation. */
    public Angle usualSize() {
        return new Angle(usualSizeRad);
    }
}
