package polewright.image.decode;

import polewright.image.Frame;
import polewright.image.FrameFacts;

/** The last steps, common to all formats: Bayer balance and saturation. */
final class FrameAssembly {
    private FrameAssembly() {}

    /** Takes ownership of the pixels and changes them in place. */
    static Frame pixels(
            int width, int height, float[] pixels, Saturation saturation, boolean mosaic, FrameFacts facts) {
        if (Float.isInfinite(saturation.typeFull())) {
            blankInfinities(pixels);
        }
        float full = saturation.of(pixels);
        if (mosaic) {
            full = BayerChannelBalance.level(width, height, pixels, full);
        }
        return new Frame(width, height, pixels, full, facts);
    }

    // Only floating point can be infinite; such a pixel is as useless as NaN.
    private static void blankInfinities(float[] pixels) {
        for (int i = 0; i < pixels.length; i++) {
            if (Float.isInfinite(pixels[i])) {
                pixels[i] = Float.NaN;
            }
        }
    }
}
