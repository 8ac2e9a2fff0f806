package polewright.simulation.camera;

import polewright.sky.InputRefused;

/**
 * The detector of a camera.
 *
 * @param width columns
 * @param height rows
 * @param pixelMicrons width of a pixel
 * @param electronsPerCount gain: electrons per count
 * @param readNoiseElectrons standard deviation of a pixel's reading
 * @param fullWellElectrons full well capacity of a pixel
 * @param bitDepth bits of a count; a pixel saturates at the well or at the largest count, whichever comes first
 * @param biasCounts reading of an unlit pixel
 * @param darkElectronsPerSecond dark current of a good pixel
 * @param bleeds whether charge beyond the well runs up and down the column (a CCD without anti-blooming), or is lost
 * @param ampGlow the detector's own light
 * @param faults hot and dead pixels
 * @param cosmicRaysPerCm2Minute rate of cosmic rays; about 1 at sea level (common practice)
 */
public record Detector(
        int width,
        int height,
        double pixelMicrons,
        double electronsPerCount,
        double readNoiseElectrons,
        double fullWellElectrons,
        int bitDepth,
        int biasCounts,
        double darkElectronsPerSecond,
        boolean bleeds,
        AmpGlow ampGlow,
        PixelFaults faults,
        double cosmicRaysPerCm2Minute) {
    private static final long MOST_PIXELS = 200_000_000;

    public Detector {
        if (width < 8 || height < 8 || (long) width * height > MOST_PIXELS) {
            throw new InputRefused(
                    "a detector of " + width + " by " + height + " pixels cannot be rendered",
                    "give 8 or more each way and no more than 200 million in all");
        }
        if (!(pixelMicrons > 0 && electronsPerCount > 0 && fullWellElectrons > 0 && readNoiseElectrons >= 0)) {
            throw new InputRefused(
                    "a detector needs a pixel width, a gain and a full well",
                    "give each above 0, read noise 0 or more");
        }
        if (bitDepth < 8 || bitDepth > 16) {
            throw new InputRefused("a bit depth of " + bitDepth + " is outside 8 to 16", "give 8, 10, 12, 14 or 16");
        }
    }

    /** A detector without faults, glow, dark current, rays or blooming: noise only. */
    public static Detector flawless(int width, int height, double pixelMicrons) {
        return new Detector(
                width, height, pixelMicrons, 1, 3, 50_000, 16, 500, 0, false, AmpGlow.NONE, PixelFaults.NONE, 0);
    }

    /** A typical small guide camera: 14 bits, a gain near 1, shallow wells. */
    public static Detector ofGuideCamera(
            int width, int height, double pixelMicrons, AmpGlow ampGlow, PixelFaults faults) {
        return new Detector(width, height, pixelMicrons, 0.9, 2.5, 14_000, 14, 240, 0.1, false, ampGlow, faults, 1);
    }

    public Detector withSize(int columns, int rows) {
        return new Detector(
                columns,
                rows,
                pixelMicrons,
                electronsPerCount,
                readNoiseElectrons,
                fullWellElectrons,
                bitDepth,
                biasCounts,
                darkElectronsPerSecond,
                bleeds,
                ampGlow,
                faults,
                cosmicRaysPerCm2Minute);
    }

    public int pixels() {
        return width * height;
    }

    /** The count at and above which a pixel is saturated. */
    public int fullCount() {
        int largest = (1 << bitDepth) - 1;
        return (int) Math.min(largest, Math.floor(biasCounts + fullWellElectrons / electronsPerCount));
    }

    /** Area in square centimetres. */
    double areaCm2() {
        double pixelCm = pixelMicrons * 1e-4;
        return pixelCm * pixelCm * width * height;
    }
}
