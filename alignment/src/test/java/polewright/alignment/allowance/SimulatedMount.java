package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.sky.place.Site;

/**
 * A mount made only of rotations, to check the code's formulas: a tube on a declination axis on a polar axis that has
 * an offset.
 *
 * @param northernEnd of the polar axis, ENU
 */
record SimulatedMount(Vector3D northernEnd) {
    static SimulatedMount of(Site site, AxisOffset offset) {
        return new SimulatedMount(AxisPointing.of(site, offset).northernEnd(site));
    }

    /** The tube's rotation from its starting position, after the drive has turned westward. */
    Rotation driven(double westwardRad) {
        return turn(northernEnd, -westwardRad);
    }

    /**
     * The tube's rotation in both axes that brings a star back to its original position in the camera: found
     * iteratively.
     */
    Rotation holding(Vector3D tube, Vector3D guideFirst, Vector3D guideNow) {
        Vector3D declinationAxis = northernEnd.crossProduct(tube).normalize();
        double hour = 0;
        double dec = 0;
        double step = 1e-4;
        for (int i = 0; i < 12; i++) {
            Vector3D miss = miss(declinationAxis, hour, dec, guideFirst, guideNow);
            if (miss.getNorm() < 1e-12) {
                break;
            }
            Vector3D byHour = miss(declinationAxis, hour + step, dec, guideFirst, guideNow)
                    .subtract(miss(declinationAxis, hour - step, dec, guideFirst, guideNow))
                    .scalarMultiply(0.5 / step);
            Vector3D byDec = miss(declinationAxis, hour, dec + step, guideFirst, guideNow)
                    .subtract(miss(declinationAxis, hour, dec - step, guideFirst, guideNow))
                    .scalarMultiply(0.5 / step);
            // Least squares in two unknowns.
            double hh = byHour.dotProduct(byHour);
            double hd = byHour.dotProduct(byDec);
            double dd = byDec.dotProduct(byDec);
            double h = -byHour.dotProduct(miss);
            double d = -byDec.dotProduct(miss);
            double determinant = hh * dd - hd * hd;
            hour += (dd * h - hd * d) / determinant;
            dec += (hh * d - hd * h) / determinant;
        }
        return both(declinationAxis, hour, dec);
    }

    private Vector3D miss(Vector3D declinationAxis, double hour, double dec, Vector3D guideFirst, Vector3D guideNow) {
        return both(declinationAxis, hour, dec).applyTo(guideFirst).subtract(guideNow);
    }

    private Rotation both(Vector3D declinationAxis, double hour, double dec) {
        return turn(northernEnd, hour).compose(turn(declinationAxis, dec), RotationConvention.VECTOR_OPERATOR);
    }

    private static Rotation turn(Vector3D about, double angleRad) {
        return new Rotation(about, angleRad, RotationConvention.VECTOR_OPERATOR);
    }
}
