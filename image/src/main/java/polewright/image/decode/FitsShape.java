package polewright.image.decode;

import polewright.sky.InputRefused;

/**
 * Size of a FITS image that can be a frame.
 *
 * @param width columns
 * @param height rows
 * @param planes colour planes: 1 or 3
 */
record FitsShape(int width, int height, int planes) {
    private static final int COLOURS = 3;

    /**
     * The size from the axes.
     *
     * @throws InputRefused if they cannot be a frame
     */
    static FitsShape of(FitsAxes axes) {
        long width = axes.length(1);
        long height = axes.length(2);
        long planes = 1;
        for (int axis = 3; axis <= axes.count(); axis++) {
            long length = axes.length(axis);
            planes = length < 1 || length > Integer.MAX_VALUE / Math.max(1, planes) ? 0 : planes * length;
        }
        if (planes != 1 && planes != COLOURS) {
            throw new InputRefused(
                    "it holds a stack of " + planes + " planes of " + width + " by " + height + " pixels",
                    "give single frames: one plane, or three of colour");
        }
        if (width < 1 || height < 1 || width > Integer.MAX_VALUE || height > Integer.MAX_VALUE) {
            throw new InputRefused("its size is " + width + " by " + height + " pixels", "take the frame again");
        }
        return new FitsShape((int) width, (int) height, (int) planes);
    }

    /** Pixels of one plane. */
    int pixels() {
        return Math.multiplyExact(width, height);
    }
}
