package polewright.simulation.camera;

/**
 * Cloud over one side of the picture, fixed to it for the length of an exposure.
 *
 * @param directionRad where in the picture the cloud lies: 0 over the right half, π/2 over the lower half
 * @param edge position of its edge, in half diagonals from the centre along that direction: 0 hides half the picture,
 *     −2 all of it
 * @param softness width over which the edge thickens, half diagonals
 * @param transmission share of starlight that passes through the thickest part
 * @param glow how much brighter than clear sky it is there; 0 for equally bright
 */
public record CloudBank(double directionRad, double edge, double softness, double transmission, double glow) {
    /** Opaque cloud over half the picture. */
    public static CloudBank overHalf(double directionRad) {
        return new CloudBank(directionRad, 0, 0.08, 0, 0.6);
    }

    /** Thickness, 0 to 1, at a place in half diagonals from the centre. */
    double thickness(double u, double v) {
        double along = u * Math.cos(directionRad) + v * Math.sin(directionRad);
        double across = v * Math.cos(directionRad) - u * Math.sin(directionRad);
        // Real clouds have ragged edges.
        double ragged = edge + 0.06 * Math.sin(7 * across + 1) + 0.03 * Math.sin(17 * across + 2);
        double t = Math.min(1, Math.max(0, (along - ragged) / softness + 0.5));
        return t * t * (3 - 2 * t);
    }
}
