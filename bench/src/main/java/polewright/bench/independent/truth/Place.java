package polewright.bench.independent.truth;

/**
 * The true place of the telescope.
 *
 * @param latitude north positive, radians
 * @param longitude east positive, radians
 * @param heightMetres above the ellipsoid
 */
public record Place(double latitude, double longitude, double heightMetres) {
    public static Place ofDegrees(double latitude, double longitude, double heightMetres) {
        return new Place(Math.toRadians(latitude), Math.toRadians(longitude), heightMetres);
    }

    /** +1 north of the equator, −1 south of it. */
    public int sign() {
        return latitude < 0 ? -1 : 1;
    }

    /** Direction of the elevated celestial pole. */
    public double[] pole() {
        return new double[] {0, sign() * Math.cos(latitude), sign() * Math.sin(latitude)};
    }

    /** Perpendicular to the pole and to east, toward the zenith. */
    private double[] upward() {
        return new double[] {0, -Math.sin(Math.abs(latitude)) * sign(), Math.cos(latitude)};
    }

    /** The offset of an axis from the pole. */
    public Offset offset(double[] axis) {
        return new Offset(Math.toDegrees(axis[0]) * 60, Math.toDegrees(Directions.dot(axis, upward())) * 60);
    }

    /** The axis with this offset from the pole. */
    double[] axis(Offset offset) {
        double east = Math.toRadians(offset.eastArcmin() / 60);
        double up = Math.toRadians(offset.upArcmin() / 60);
        double[] eastward = {1, 0, 0};
        double[] along = Directions.plus(new double[3], Math.sqrt(1 - east * east - up * up), pole());
        return Directions.plus(Directions.plus(along, east, eastward), up, upward());
    }
}
