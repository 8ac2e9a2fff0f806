package polewright.operations.picture;

import java.awt.image.IndexColorModel;
import polewright.drawing.Palette;

/** The rendering of a frame's image that suits a palette. */
public enum Tint {
    /**
     * A negative, like a paper chart: dark stars on the page's paper, so that a palette's ink is visible against the
     * sky.
     */
    NEGATIVE,
    /** Grey on black, a little blue in the background, for a file. */
    GREY,
    /** Red alone, without any green or blue, to preserve night vision. */
    RED;

    private static final int SHADES = 256;

    /** The tint for a palette. */
    public static Tint of(Palette palette) {
        return palette.equals(Palette.DARK) ? RED : NEGATIVE;
    }

    /** A colour for each shade from 0, the background, to 255. */
    IndexColorModel colours() {
        String sky = this == NEGATIVE ? Palette.LIGHT.background() : this == GREY ? "#000006" : "#000000";
        String star = this == NEGATIVE ? Palette.LIGHT.ink() : this == GREY ? "#e1e1e7" : "#ff0000";
        byte[][] channels = new byte[3][SHADES];
        for (int shade = 0; shade < SHADES; shade++) {
            double share = shade / (SHADES - 1.0);
            for (int channel = 0; channel < 3; channel++) {
                int from = channel(sky, channel);
                channels[channel][shade] = (byte) Math.round(from + share * (channel(star, channel) - from));
            }
        }
        return new IndexColorModel(8, SHADES, channels[0], channels[1], channels[2]);
    }

    /** One channel of {@code #rrggbb}. */
    private static int channel(String colour, int number) {
        return Integer.parseInt(colour.substring(1 + 2 * number, 3 + 2 * number), 16);
    }
}
