package polewright.sky.atlas;

import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** A cone of sky, with its centre and edge in the forms that a search of cells needs. */
record Cone(double decRad, double radiusRad, double raRad, double x, double y, double z, double chordSquared) {
    // Wider than any rounding of a star's position, so that no cell at the edge is missed.
    private static final double MARGIN_RAD = 1e-9;

    static Cone around(Angle rightAscension, Angle declination, Angle radius) {
        if (!(Math.abs(declination.degrees()) <= 90 + 1e-9)) {
            throw new InputRefused(
                    "declination " + PlainNumber.asTyped(declination.degrees()) + " is beyond 90 degrees",
                    "give right ascension first, then declination, in degrees");
        }
        if (!(radius.degrees() >= 0 && radius.degrees() <= 180)) {
            throw new InputRefused(
                    "search radius " + PlainNumber.asTyped(radius.degrees()) + " is outside 0 to 180 degrees",
                    "give the radius of the field in degrees");
        }
        double ra = rightAscension.wrappedPositive().radians();
        double dec = declination.radians();
        double chord = 2 * Math.sin(radius.radians() / 2);
        double cosDec = Math.cos(dec);
        return new Cone(
                dec, radius.radians(), ra, cosDec * Math.cos(ra), cosDec * Math.sin(ra), Math.sin(dec), chord * chord);
    }

    /** Chords keep their precision in a narrow cone, where a cosine loses it. */
    boolean holds(double starX, double starY, double starZ) {
        double dx = starX - x;
        double dy = starY - y;
        double dz = starZ - z;
        return dx * dx + dy * dy + dz * dz <= chordSquared;
    }

    boolean reaches(double starDecRad) {
        return Math.abs(starDecRad - decRad) <= radiusRad + MARGIN_RAD;
    }

    int firstZone() {
        return SkyCells.zoneAt(Math.toDegrees(Math.max(-Math.PI / 2, decRad - radiusRad - MARGIN_RAD)));
    }

    int lastZone() {
        return SkyCells.zoneAt(Math.toDegrees(Math.min(Math.PI / 2, decRad + radiusRad + MARGIN_RAD)));
    }

    /** Half the cone's extent in right ascension; half a turn if it contains a pole. */
    private double halfWidthRad() {
        double reach = Math.abs(decRad) + radiusRad + MARGIN_RAD;
        if (reach >= Math.PI / 2) {
            return Math.PI;
        }
        return Math.asin(Math.min(1, Math.sin(radiusRad) / Math.cos(decRad))) + MARGIN_RAD / Math.cos(reach);
    }

    int firstColumn(int cells) {
        return halfWidthRad() >= Math.PI ? 0 : (int) Math.floor((raRad - halfWidthRad()) / (2 * Math.PI) * cells);
    }

    int columns(int cells) {
        if (halfWidthRad() >= Math.PI) {
            return cells;
        }
        int last = (int) Math.floor((raRad + halfWidthRad()) / (2 * Math.PI) * cells);
        return Math.min(cells, last - firstColumn(cells) + 1);
    }
}
