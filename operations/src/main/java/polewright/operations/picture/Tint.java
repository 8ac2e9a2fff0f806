package polewright.operations.picture;

import java.awt.image.IndexColorModel;
import polewright.drawing.Palette;

/** How a frame's light is shown beside drawings of a palette. */
public enum Tint {
    /** As on a paper chart: stars dark on the page's paper, so that a palette's ink stands out from the sky. */
    NEGATIVE,
    /** Red alone, without any green or blue, for eyes that are used to the dark. */
    RED;

    private static final int SHADES = 256;

    /** The one that goes with a palette. */
    public static Tint of(Palette palette) {
        return palette.equals(Palette.DARK) ? RED : NEGATIVE;
    }

    /** A colour for each shade from 0, the sky, to 255. */
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

    /** Of {@code #rrggbb}. */
    private static int channel(String colour, int number) {
        return Integer.parseInt(colour.substring(1 + 2 * number, 3 + 2 * number), 16);
    }
}
