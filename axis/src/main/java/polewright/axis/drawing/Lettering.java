package polewright.axis.drawing;

/** How wide a text comes out. */
final class Lettering {
    // Widest common default for sans-serif (DejaVu Sans) on running lower-case text; others are narrower.
    private static final double EMS_PER_LETTER = 0.6;

    private Lettering() {}

    /** A little more than the width that the usual sans-serif fonts need, user units. */
    static double width(String text, double size) {
        return text.length() * size * EMS_PER_LETTER;
    }
}
