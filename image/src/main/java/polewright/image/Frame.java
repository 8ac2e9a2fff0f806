package polewright.image;

/**
 * One greyscale picture with the metadata of its file.
 *
 * <p>Values are linear counts if the file's are; colour planes are averaged, and the four phases of a Bayer mosaic are
 * brought to the same background level. Immutable. To save memory the pixel array is shared with the caller, not
 * copied, and must not be modified.
 */
public final class Frame {
    private final int width;
    private final int height;
    private final float[] pixels;
    private final float saturation;
    private final FrameFacts facts;

    /**
     * @param width columns
     * @param height rows
     * @param pixels row by row, {@code width × height} of them; NaN where the file has none
     * @param saturation the value at and above which a pixel is saturated; infinite if unknown
     * @param facts metadata of the file
     */
    public Frame(int width, int height, float[] pixels, float saturation, FrameFacts facts) {
        if (width < 1 || height < 1 || pixels.length != (long) width * height) {
            throw new IllegalArgumentException(
                    "a frame of " + width + " by " + height + " cannot have " + pixels.length + " pixels");
        }
        this.width = width;
        this.height = height;
        this.pixels = pixels;
        this.saturation = saturation;
        this.facts = facts;
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    /** The pixel array itself, not a copy; row by row. */
    public float[] pixels() {
        return pixels;
    }

    public float saturation() {
        return saturation;
    }

    public FrameFacts facts() {
        return facts;
    }
}
