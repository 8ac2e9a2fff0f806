package polewright.image.match;

import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Plates with known terms, for comparison with other programs. */
public final class PlatesAtHand {
    private static final double ARCSEC = Math.PI / (180 * 3600);

    private PlatesAtHand() {}

    /** A plate and a name for it. */
    public record Named(String name, Plate plate) {}

    /**
     * From a pinhole to a distorted, sheared and mirrored lens; at the equator, at the 0h wrap, near and at the poles.
     */
    public static List<Named> all() {
        return List.of(
                new Named("pinhole", plate(1600, 1200, false, 66.2, 79.4, 35.4, 3.1, Distortion.NONE)),
                new Named("mirrored-pinhole", plate(1601, 901, true, 359.99, -0.2, 271, 40.3, Distortion.NONE)),
                new Named("radial", plate(1280, 960, false, 11.4, 88.8, 227.8, 77.6, radial(-9.1))),
                new Named("cubic", plate(6000, 4000, false, 180.2, -45.5, 12.5, 16.1, cubic())),
                new Named("mirrored-cubic", plate(3000, 2001, true, 301.1, 38.9, 98.7, 8.2, cubic())),
                new Named("at-the-pole", plate(800, 800, true, 0, -90, 123, 5.5, radial(2.2))));
    }

    /** With the picture's downward direction at this position angle from north through east. */
    private static Plate plate(
            int width,
            int height,
            boolean mirrored,
            double raDeg,
            double decDeg,
            double downDeg,
            double arcsecPerPixel,
            Distortion distortion) {
        double ra = Math.toRadians(raDeg);
        double dec = Math.toRadians(decDeg);
        Vector3D forward = new Vector3D(ra, dec);
        Vector3D north = new Vector3D(ra, dec + Math.PI / 2);
        Vector3D east = new Vector3D(ra + Math.PI / 2, 0);
        double turn = Math.toRadians(downDeg);
        Vector3D down = new Vector3D(Math.cos(turn), north, Math.sin(turn), east);
        return new Plate(
                width,
                height,
                mirrored,
                down.crossProduct(forward),
                down,
                forward,
                1 / (arcsecPerPixel * ARCSEC),
                distortion);
    }

    private static Distortion radial(double atCornerPixels) {
        double k = atCornerPixels;
        return new Distortion(0, 0, new double[] {0, 0, 0, k, 0, k, 0}, new double[] {0, 0, 0, 0, k, 0, k});
    }

    private static Distortion cubic() {
        return new Distortion(2e-4, -3e-4, new double[] {1.5, -2.1, 0.7, -20.5, 1.1, -19.3, 0.4}, new double[] {
            -0.8, 1.9, 2.3, 0.6, -21.7, -1.2, -18.8
        });
    }
}
