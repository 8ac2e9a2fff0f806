package polewright.alignment.sighting;

import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;

/**
 * An optic that was entered wrongly, and its correct figures. A sighting does not name its optic: it is assumed to be
 * through this one if its field or division, and its view, are this one's.
 */
public record OpticCorrection(Optic entered, Optic corrected) {
    private static final double SAME_ARCSEC = 1e-3;

    /** Whether a length was read in a unit of this optic. */
    boolean covers(ReadLength length) {
        return switch (length.unit()) {
            case FIELDS -> isSame(length.perUnit(), entered.field());
            case DIVISIONS ->
                entered.division().filter(one -> isSame(one, length.perUnit())).isPresent();
            case ARCSECONDS, PIXELS -> false;
        };
    }

    /** The view may also be rotated, by a diagonal turned sideways. */
    boolean covers(View view) {
        return view.orientation() == entered.view().orientation();
    }

    /** Whether a view of which only the reversal is known can be this optic's. */
    boolean coversMirrored(boolean mirrored) {
        return mirrored == isMirrored(entered);
    }

    /** The same count of the optic's real units. */
    ReadLength length(ReadLength length) {
        Angle perUnit = length.unit() == ReadLength.Unit.FIELDS
                ? corrected.field()
                : corrected.division().orElse(length.perUnit());
        return new ReadLength(length.count(), length.unit(), perUnit);
    }

    View view(View view) {
        return new View(
                corrected.view().orientation(),
                view.turned()
                        .minus(entered.view().turned())
                        .plus(corrected.view().turned()));
    }

    boolean mirrored() {
        return isMirrored(corrected);
    }

    /** The uncertainty of a length, which was given in the same unit. */
    Angle sigma(Angle sigma, ReadLength length) {
        return sigma.times(length(length).perUnit().radians() / length.perUnit().radians());
    }

    private static boolean isSame(Angle one, Angle other) {
        return Math.abs(one.minus(other).arcseconds()) < SAME_ARCSEC;
    }

    private static boolean isMirrored(Optic optic) {
        return optic.view().orientation() == Orientation.MIRRORED;
    }
}
