package polewright.simulation.camera;

/**
 * Light that a detector's own electronics give off, brightest at the bottom right corner and fading by e along each
 * side.
 *
 * @param electronsPerSecond in a pixel at the corner
 * @param reachPixels how far it fades by e
 */
public record AmpGlow(double electronsPerSecond, double reachPixels) {
    public static final AmpGlow NONE = new AmpGlow(0, 1);
}
