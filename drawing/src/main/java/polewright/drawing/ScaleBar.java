package polewright.drawing;

import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/**
 * A round length on the sky for the scale bar of a picture.
 *
 * @param length 1, 2 or 5 times a power of ten arcseconds or degrees; 1, 2, 5, 10, 20 or 30 arcminutes or arcseconds
 * @param words {@code 30″}, {@code 5′}, {@code 2°}
 */
public record ScaleBar(Angle length, String words) {
    private static final double[] ROUND = {1, 2, 5, 10, 20, 30};

    /** The longest round length not longer than {@code limit}. */
    public static ScaleBar within(Angle limit) {
        // Allowance for the last digit, which unit conversions disturb.
        double arcsec = Math.abs(limit.arcseconds()) * (1 + 1e-9);
        if (arcsec >= 3600) {
            double degrees = longest(arcsec / 3600);
            return new ScaleBar(Angle.ofDegrees(degrees), PlainNumber.of(degrees) + "°");
        }
        if (arcsec >= 60) {
            double arcmin = longest(arcsec / 60);
            return new ScaleBar(Angle.ofArcminutes(arcmin), PlainNumber.of(arcmin) + "′");
        }
        double whole = arcsec >= 1 ? longest(arcsec) : decimal(arcsec);
        return new ScaleBar(Angle.ofArcseconds(whole), PlainNumber.of(whole) + "″");
    }

    private static double longest(double limit) {
        double found = 1;
        for (double length : ROUND) {
            found = length <= limit ? length : found;
        }
        return found;
    }

    private static double decimal(double limit) {
        double power = Math.pow(10, Math.floor(Math.log10(limit)));
        return power * (limit >= 5 * power ? 5 : limit >= 2 * power ? 2 : 1);
    }
}
