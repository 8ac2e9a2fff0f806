package polewright.alignment.allowance;

import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * The linear map that makes a zone about as wide as it is long, stored as its inverse, the Cholesky factor of the
 * zone's second moments.
 *
 * @param eastByX east for a step of x
 * @param upByX up for a step of x
 * @param upByY up for a step of y
 */
record ZoneNormalisation(double eastByX, double upByX, double upByY) {
    static final ZoneNormalisation NONE = new ZoneNormalisation(1, 0, 1);

    static ZoneNormalisation of(ConvexPolygon zone) {
        Vector2D middle = zone.centroid();
        double eastEast = 0;
        double eastUp = 0;
        double upUp = 0;
        double twiceArea = 0;
        for (int i = 0; i < zone.corners().size(); i++) {
            Vector2D a = zone.corners().get(i).subtract(middle);
            Vector2D b = zone.corners().get((i + 1) % zone.corners().size()).subtract(middle);
            // Moments of the triangle between two corners and the middle.
            double cross = ConvexPolygon.cross(a, b);
            Vector2D sum = a.add(b);
            twiceArea += cross;
            eastEast += cross * (a.getX() * a.getX() + b.getX() * b.getX() + sum.getX() * sum.getX()) / 12;
            upUp += cross * (a.getY() * a.getY() + b.getY() * b.getY() + sum.getY() * sum.getY()) / 12;
            eastUp += cross * (a.getX() * a.getY() + b.getX() * b.getY() + sum.getX() * sum.getY()) / 12;
        }
        if (!(twiceArea > 0 && eastEast > 0)) {
            return NONE;
        }
        double eastByX = Math.sqrt(eastEast / twiceArea);
        double upByX = eastUp / twiceArea / eastByX;
        double rest = upUp / twiceArea - upByX * upByX;
        return rest > 0 ? new ZoneNormalisation(eastByX, upByX, Math.sqrt(rest)) : NONE;
    }

    /** The offset, arcminutes, for a normalised step. */
    Vector2D denormalised(double x, double y) {
        return new Vector2D(eastByX * x, upByX * x + upByY * y);
    }
}
