package polewright.image.wcs;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.match.Distortion;
import polewright.image.match.Plate;

/**
 * A plate as a FITS header: the gnomonic projection (M. R. Calabretta and E. W. Greisen 2002, <i>Astronomy and
 * Astrophysics</i> 395, 1077; E. W. Greisen and M. R. Calabretta 2002, 395, 1061), with the polynomials of the open SIP
 * convention (D. L. Shupe et al. 2005, ASP Conf. 347, 491) for distortion.
 *
 * <p>With p the pixel position from the centre of the frame, the plate's ideal position is P = L p + q(p): L holds the
 * mirror reversal and the terms of first order, q those of second and third. The header gives CD (p + f(p)), so CD = K
 * L and f = L⁻¹ q, where K converts pixels to degrees east and north.
 *
 * <p>Pixel (1, 1) is the first one stored: at the bottom left of a FITS picture as displayed, at the top left of any
 * other. There is only a header, without an image: the size in it is that of the frame.
 */
public final class WcsHeader {
    private static final int ORDER = 3;

    private final Plate plate;
    private final Distortion lens;
    // +1, or −1 in a mirrored frame, where u runs against the columns.
    private final int columnSense;

    private WcsHeader(Plate plate) {
        this.plate = plate;
        this.lens = plate.distortion();
        this.columnSense = plate.mirrored() ? -1 : 1;
    }

    /** The bytes of the header, blocks of 2880. */
    public static byte[] of(Plate plate) {
        return new WcsHeader(plate).cards().bytes();
    }

    private FitsCards cards() {
        FitsCards cards = new FitsCards();
        boolean curved = lens.isCurved();
        cards.add("SIMPLE", true, "header of a frame, without its pixels");
        cards.add("BITPIX", 8, "no pixels follow");
        cards.add("NAXIS", 2, "");
        cards.add("NAXIS1", plate.width(), "columns of the frame");
        cards.add("NAXIS2", plate.height(), "rows of the frame");
        cards.add("WCSAXES", 2, "");
        cards.add("CTYPE1", curved ? "RA---TAN-SIP" : "RA---TAN", "gnomonic" + (curved ? ", SIP distortion" : ""));
        cards.add("CTYPE2", curved ? "DEC--TAN-SIP" : "DEC--TAN", "");
        cards.add("CUNIT1", "deg", "");
        cards.add("CUNIT2", "deg", "");
        cards.add("RADESYS", "ICRS", "");
        cards.add("EQUINOX", 2000.0, "");
        cards.add("LONPOLE", 180.0, "[deg]");
        cards.add("CRVAL1", plate.rightAscension().degrees(), "[deg] right ascension of the centre");
        cards.add("CRVAL2", plate.declination().degrees(), "[deg] declination of the centre");
        cards.add("CRPIX1", (plate.width() + 1) / 2.0, "column of the centre; the first is 1");
        cards.add("CRPIX2", (plate.height() + 1) / 2.0, "row of the centre; the first stored is 1");
        double[][] cd = times(pixelsToDegrees(), ideal());
        cards.add("CD1_1", cd[0][0], "[deg] east a column");
        cards.add("CD1_2", cd[0][1], "[deg] east a row");
        cards.add("CD2_1", cd[1][0], "[deg] north a column");
        cards.add("CD2_2", cd[1][1], "[deg] north a row");
        if (curved) {
            addPolynomials(cards);
        }
        cards.comment("Pixel (1,1) is the first pixel of the array as it is stored.");
        return cards;
    }

    private void addPolynomials(FitsCards cards) {
        double[][] back = inverse(ideal());
        String[] letters = {"A", "B"};
        for (int axis = 0; axis < 2; axis++) {
            cards.add(letters[axis] + "_ORDER", ORDER, axis == 0 ? "columns" : "rows");
            for (int term = 0; term < Distortion.TERMS; term++) {
                double pixels = back[axis][0] * lens.termInU(term) + back[axis][1] * lens.termInV(term);
                int i = Distortion.powerOfU(term);
                int j = Distortion.powerOfV(term);
                double value = pixels * Math.pow(columnSense, i) / Math.pow(plate.halfDiagonal(), (double) i + j);
                cards.add(letters[axis] + "_" + i + "_" + j, value, "");
            }
        }
    }

    /** L. */
    private double[][] ideal() {
        return new double[][] {
            {columnSense * (1 + lens.stretch()), lens.shear()}, {columnSense * lens.shear(), 1 - lens.stretch()}
        };
    }

    /** K: columns for the camera's two axes, rows for east and north. */
    private double[][] pixelsToDegrees() {
        double ra = plate.rightAscension().radians();
        double dec = plate.declination().radians();
        Vector3D east = new Vector3D(-Math.sin(ra), Math.cos(ra), 0);
        Vector3D north = new Vector3D(-Math.sin(dec) * Math.cos(ra), -Math.sin(dec) * Math.sin(ra), Math.cos(dec));
        double degrees = Math.toDegrees(1 / plate.pixelsPerRadian());
        return new double[][] {
            {degrees * plate.right().dotProduct(east), degrees * plate.down().dotProduct(east)},
            {degrees * plate.right().dotProduct(north), degrees * plate.down().dotProduct(north)}
        };
    }

    private static double[][] times(double[][] a, double[][] b) {
        double[][] product = new double[2][2];
        for (int row = 0; row < 2; row++) {
            for (int column = 0; column < 2; column++) {
                product[row][column] = a[row][0] * b[0][column] + a[row][1] * b[1][column];
            }
        }
        return product;
    }

    private static double[][] inverse(double[][] m) {
        double determinant = m[0][0] * m[1][1] - m[0][1] * m[1][0];
        return new double[][] {
            {m[1][1] / determinant, -m[0][1] / determinant}, {-m[1][0] / determinant, m[0][0] / determinant}
        };
    }
}
