package polewright.operations.picture;

import java.awt.Color;

/** The colours of a picture: a dark background, to preserve night vision; each mark has its own colour and shape. */
final class Ink {
    static final Color GROUND = new Color(0x10, 0x12, 0x16);
    static final Color WORDS = new Color(0xd8, 0xd2, 0xc4);
    static final Color FAINT_WORDS = new Color(0x9a, 0x97, 0x8c);
    static final Color KNOWN = new Color(0x6f, 0xc3, 0xb4);
    static final Color UNKNOWN = new Color(0xc8, 0x78, 0x8e);
    static final Color POLE = new Color(0xf0, 0xc2, 0x4b);
    static final Color AXIS = new Color(0xff, 0x7a, 0x45);
    // Behind lines and letters, so that they remain legible on a bright sky.
    static final Color SHADE = new Color(0, 0, 0, 150);

    private Ink() {}

    static Color of(PointMark.Kind kind) {
        return kind == PointMark.Kind.POLE ? POLE : AXIS;
    }
}
