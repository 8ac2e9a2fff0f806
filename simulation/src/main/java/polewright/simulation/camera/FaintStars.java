package polewright.simulation.camera;

import java.util.SplittableRandom;
import java.util.function.BiConsumer;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;

/**
 * Invented stars too faint for the atlas, always the same ones: a long exposure shows more stars than any small
 * catalogue has, and a matcher must cope with that.
 *
 * <p>Their number is that of the average sky (<i>Allen's Astrophysical Quantities</i>, 4th ed., 2000, table of star
 * counts; from memory: about 60 per square degree to V 12, and 2.4 times as many for each magnitude; NASA's Space Math
 * sheet 103 has 55 and 2.46), concentrated toward the Milky Way.
 */
final class FaintStars {
    private static final double BRIGHTEST = 12.2;
    private static final double PER_SQUARE_DEGREE_TO_12 = 60;
    private static final double SLOPE = 0.38;
    private static final double CELL_DEG = 0.25;
    // North galactic pole, ICRS: 192.859°, +27.128° (Hipparcos catalogue, ESA 1997, vol. 1, 1.5.3).
    private static final Vector3D GALACTIC_POLE = new Vector3D(Math.toRadians(192.859_48), Math.toRadians(27.128_25));

    private FaintStars() {}

    /** Passes on the place and magnitude of each star within a radius of an ICRS direction. */
    static void visit(
            CatalogueStar centre, Angle radius, double faintestMagnitude, BiConsumer<CatalogueStar, Double> visitor) {
        if (faintestMagnitude <= BRIGHTEST) {
            return;
        }
        Vector3D middle = new Vector3D(
                centre.rightAscension().radians(), centre.declination().radians());
        double centreDeg = centre.declination().degrees();
        int zones = (int) (180 / CELL_DEG);
        int first = (int) Math.max(0, Math.floor((centreDeg - radius.degrees() + 90) / CELL_DEG));
        int last = (int) Math.min(zones - 1.0, Math.floor((centreDeg + radius.degrees() + 90) / CELL_DEG));
        for (int zone = first; zone <= last; zone++) {
            double southDeg = zone * CELL_DEG - 90;
            double cosine = Math.cos(Math.toRadians(southDeg + CELL_DEG / 2));
            int cells = (int) Math.max(1, Math.ceil(360 * cosine / CELL_DEG));
            for (int cell = 0; cell < cells; cell++) {
                Vector3D cellMiddle =
                        new Vector3D(2 * Math.PI * (cell + 0.5) / cells, Math.toRadians(southDeg + CELL_DEG / 2));
                if (Vector3D.angle(middle, cellMiddle) < radius.radians() + Math.toRadians(CELL_DEG)) {
                    visitCell(zone, cell, cells, faintestMagnitude, visitor);
                }
            }
        }
    }

    private static void visitCell(
            int zone, int cell, int cells, double faintestMagnitude, BiConsumer<CatalogueStar, Double> visitor) {
        SplittableRandom random = new SplittableRandom(((long) zone << 32) + cell);
        double southRad = Math.toRadians(zone * CELL_DEG - 90);
        double northRad = southRad + Math.toRadians(CELL_DEG);
        double squareDegrees =
                (Math.sin(northRad) - Math.sin(southRad)) * Math.toDegrees(2 * Math.PI / cells) * 180 / Math.PI;
        Vector3D middle = new Vector3D(2 * Math.PI * (cell + 0.5) / cells, (southRad + northRad) / 2);
        double perMagnitude = Math.pow(10, SLOPE * (BRIGHTEST - 12));
        double brightEnd = PER_SQUARE_DEGREE_TO_12 * perMagnitude * squareDegrees * crowding(middle);
        // Brightest first, as arrivals of a Poisson process in the cumulative star count: the bright ones stay the
        // same whatever the limit.
        double number = brightEnd;
        while (true) {
            number -= Math.log(1 - random.nextDouble());
            double magnitude = BRIGHTEST + Math.log10(number / brightEnd) / SLOPE;
            if (magnitude > faintestMagnitude) {
                return;
            }
            double ra = 2 * Math.PI * (cell + random.nextDouble()) / cells;
            double dec =
                    Math.asin(Math.sin(southRad) + random.nextDouble() * (Math.sin(northRad) - Math.sin(southRad)));
            visitor.accept(CatalogueStar.fixed(new Angle(ra), new Angle(dec)), magnitude);
        }
    }

    /** Density relative to the average sky: three times in the Milky Way, half at the galactic poles. */
    private static double crowding(Vector3D direction) {
        double latitudeDeg = 90 - Math.toDegrees(Vector3D.angle(direction, GALACTIC_POLE));
        return 0.5 + 2.4 * Math.exp(-Math.abs(latitudeDeg) / 12);
    }
}
