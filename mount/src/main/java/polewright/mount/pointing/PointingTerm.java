package polewright.mount.pointing;

import java.util.EnumSet;
import java.util.Set;
import polewright.mount.rig.MountKind;
import polewright.sky.angle.Angle;

/**
 * One way in which a mount's reading differs from where the tube looks; all as the sky has it, true minus read.
 *
 * <p>The usual sizes are 1 sigma of what an amateur's fork is found to have before anything is known of it (common
 * practice): of its zeros nothing, of its axis what a night that is not yet set up has.
 */
public enum PointingTerm {
    /** The hour angle's zero: positive where the tube looks west of its reading. */
    HOUR_ANGLE_ZERO(0, "zero of hour angle", 1800),
    /** The declination's zero: positive where the tube looks north of its reading. */
    DECLINATION_ZERO(1, "zero of declination", 600),
    /** The tube is not square to the declination axis: positive where it looks east. */
    CONE(2, "cone error", 10),
    /** The declination axis is not square to the polar axis: positive when its east end at hour angle 0 tilts north. */
    AXES_NOT_SQUARE(3, "axes not square", 5),
    /** The polar axis east of the pole, on the sky. */
    AXIS_EAST(4, "axis east of the pole", 180),
    /** The polar axis above the pole, on the sky. */
    AXIS_UP(5, "axis above the pole", 180),
    /** The fork gives as the tube's weight lies flat on its arms: declination changes with the cosine of hour angle. */
    FORK_SAG_FLAT(6, "fork sag, arms level", 1),
    /** The fork gives sideways: one arm above the other, with the sine of hour angle. */
    FORK_SAG_SIDE(7, "fork sag, one arm up", 1),
    /** The tube droops with the cosine of altitude. */
    TUBE_SAG(8, "tube sag", 1);

    private final int column;
    private final String words;
    private final double usualSizeRad;

    PointingTerm(int column, String words, double usualSizeArcmin) {
        this.column = column;
        this.words = words;
        usualSizeRad = Angle.ofArcminutes(usualSizeArcmin).radians();
    }

    /** Its place among all, from 0, in vectors and matrices of terms. */
    int column() {
        return column;
    }

    /** 1 sigma of what it is before anything is known of the mount, radians. */
    double usualSizeRad() {
        return usualSizeRad;
    }

    public String words() {
        return words;
    }

    /**
     * Those that a mount of that kind can have. Only a fork carries its tube between arms that sag; the other side of a
     * German mount is a reading through the pole, so that its cone and its axes are the fork's own terms.
     */
    public static Set<PointingTerm> of(MountKind kind) {
        boolean isFork = kind == MountKind.FORK_ON_WEDGE || kind == MountKind.FORK_UPRIGHT;
        EnumSet<PointingTerm> terms = EnumSet.allOf(PointingTerm.class);
        if (!isFork) {
            terms.removeAll(EnumSet.of(FORK_SAG_FLAT, FORK_SAG_SIDE));
        }
        return terms;
    }

    /** 1 sigma of what it is before anything is known of the mount. */
    public Angle usualSize() {
        return new Angle(usualSizeRad);
    }
}
