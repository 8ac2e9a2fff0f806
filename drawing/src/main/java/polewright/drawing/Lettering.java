package polewright.drawing;

import java.util.ArrayList;
import java.util.List;

/** Widths of text. */
public final class Lettering {
    // Widest common default for sans-serif (DejaVu Sans) in running lower-case text; others are narrower.
    private static final double EMS_PER_LETTER = 0.6;

    private Lettering() {}

    /** Slightly more than the width in the usual sans-serif fonts, user units. */
    public static double width(String text, double size) {
        return text.length() * size * EMS_PER_LETTER;
    }

    /** Words wrapped to lines of at most {@code letters}; text beyond the last line is replaced by an ellipsis. */
    public static List<String> wrapped(String text, int letters, int mostLines) {
        List<String> lines = new ArrayList<>();
        StringBuilder current = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            if (current.length() > 0 && current.length() + 1 + word.length() > letters) {
                lines.add(current.toString());
                current.setLength(0);
            }
            current.append(current.length() == 0 ? "" : " ").append(word);
        }
        lines.add(current.toString());
        List<String> kept = new ArrayList<>(lines.subList(0, Math.min(mostLines, lines.size())));
        if (lines.size() > mostLines) {
            kept.set(mostLines - 1, kept.get(mostLines - 1) + "…");
        }
        kept.replaceAll(line -> line.length() > letters ? line.substring(0, letters - 1) + "…" : line);
        return kept;
    }
}
