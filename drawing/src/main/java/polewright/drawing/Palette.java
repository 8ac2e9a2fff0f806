package polewright.drawing;

/**
 * The colours of a drawing, as {@code #rrggbb}.
 *
 * @param background the paper
 * @param text letters and figures; at least 4.5 : 1 against the paper (WCAG 2.1, 1.4.3)
 * @param ink outlines; at least 3 : 1 (WCAG 2.1, 1.4.11)
 * @param guide level, plumb and ground lines; at least 3 : 1
 * @param metal fill of stands and mounts
 * @param glass fill of tubes and cameras
 * @param axis the polar axis and its angles; at least 4.5 : 1
 */
public record Palette(
        String background, String text, String ink, String guide, String metal, String glass, String axis) {
    /** For use by day. */
    public static final Palette LIGHT =
            new Palette("#fbfaf5", "#22303a", "#22303a", "#76828a", "#cfd8d6", "#ecf0e8", "#a8391c");

    /** Deep red on black, for dark-adapted eyes. */
    public static final Palette DARK =
            new Palette("#000000", "#ea432d", "#c43b27", "#b03523", "#3a0d08", "#220705", "#ff5138");
}
