package polewright.simulation.camera;

/**
 * The faulty pixels of one detector, the same ones in every frame.
 *
 * @param seed distinguishes one detector's faults from another's
 * @param hotFraction share of hot pixels
 * @param hotElectronsPerSecond median dark current of the hot pixels, which spread over three powers of ten about it
 * @param deadFraction share of nearly insensitive pixels
 */
public record PixelFaults(long seed, double hotFraction, double hotElectronsPerSecond, double deadFraction) {
    public static final PixelFaults NONE = new PixelFaults(0, 0, 0, 0);
}
