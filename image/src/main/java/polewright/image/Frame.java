package polewright.image;

/**
 * One picture in grey, with what its file says of it.
 *
 * <p>Values are linear counts where the file's are; colour planes are averaged, and the four colours of a mosaic are
 * brought to the same level of sky. Immutable; the pixels are not copied on the way in or out, so whoever made them must
 * leave them alone.
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
     * @param pixels row after row, {@code width × height} of them; NaN where the file has none
     * @param saturation the value at and above which a pixel is full; infinite when not known
     * @param facts what the file says of itself
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

    /** The pixels themselves, not a copy; row after row. */
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
