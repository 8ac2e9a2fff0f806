package polewright.simulation.camera;

import polewright.sky.InputRefused;

/**
 * What turns light into numbers.
 *
 * @param width columns
 * @param height rows
 * @param pixelMicrons width of a pixel
 * @param electronsPerCount gain: electrons that make one count
 * @param readNoiseElectrons 1 sigma of a pixel's reading
 * @param fullWellElectrons what a pixel can hold
 * @param bitDepth bits of a count; a pixel is full at the well or at the largest count, whichever comes first
 * @param biasCounts what an unlit pixel reads
 * @param darkElectronsPerSecond what a sound pixel leaks
 * @param bleeds whether charge beyond the well runs up and down the column (a CCD without drains), or is lost
 * @param ampGlow the detector's own light
 * @param faults hot and dead pixels
 * @param cosmicRaysPerCm2Minute how many strike; about 1 at sea level (common practice)
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

    /** A detector without faults, glow, dark current, rays or bleeding: noise only. */
    public static Detector flawless(int width, int height, double pixelMicrons) {
        return new Detector(
                width, height, pixelMicrons, 1, 3, 50_000, 16, 500, 0, false, AmpGlow.NONE, PixelFaults.NONE, 0);
    }

    /** As small guide cameras have it: 14 bits, a gain near 1, wells soon full. */
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

    /** The count at and above which a pixel is full. */
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
