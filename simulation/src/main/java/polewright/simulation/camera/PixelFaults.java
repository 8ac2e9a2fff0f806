package polewright.simulation.camera;

/**
 * The pixels of one detector that misbehave, the same ones in every frame.
 *
 * @param seed tells one detector's faults from another's
 * @param hotFraction share of the pixels that leak charge
 * @param hotElectronsPerSecond median of what those leak; they spread over three powers of ten about it
 * @param deadFraction share of the pixels that see next to nothing
 */
public record PixelFaults(long seed, double hotFraction, double hotElectronsPerSecond, double deadFraction) {
    public static final PixelFaults NONE = new PixelFaults(0, 0, 0, 0);
}
