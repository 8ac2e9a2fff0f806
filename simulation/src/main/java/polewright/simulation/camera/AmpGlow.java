package polewright.simulation.camera;

/**
 * Amplifier glow: light from a detector's own electronics, brightest at the bottom right corner and fading by a
 * factor of e along each side.
 *
 * @param electronsPerSecond in a pixel at the corner
 * @param reachPixels distance over which it fades by a factor of e
 */
public record AmpGlow(double electronsPerSecond, double reachPixels) {
    public static final AmpGlow NONE = new AmpGlow(0, 1);
}
