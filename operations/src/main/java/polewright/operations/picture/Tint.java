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
    /** Red alone, without any green or blue, to preserve night vision. */
    RED;

    private static final int SHADES = 256;

    /** The tint for a palette. */
    public static Tint of(Palette palette) {
        return palette.equals(Palette.DARK) ? RED : NEGATIVE;
    }

    /** A colour for each shade from 0, the background, to 255. */
    IndexColorModel colours() {
        byte[][] channels = new byte[3][SHADES];
        Palette paper = Palette.LIGHT;
        for (int shade = 0; shade < SHADES; shade++) {
            double share = shade / (SHADES - 1.0);
            for (int channel = 0; channel < 3; channel++) {
                int sky = this == RED ? 0 : channel(paper.background(), channel);
                int star = this == RED ? (channel == 0 ? 255 : 0) : channel(paper.ink(), channel);
                channels[channel][shade] = (byte) Math.round(sky + share * (star - sky));
            }
        }
        return new IndexColorModel(8, SHADES, channels[0], channels[1], channels[2]);
    }

    /** One channel of {@code #rrggbb}. */
    private static int channel(String colour, int number) {
        return Integer.parseInt(colour.substring(1 + 2 * number, 3 + 2 * number), 16);
    }
}
