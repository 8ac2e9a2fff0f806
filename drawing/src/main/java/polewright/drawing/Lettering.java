package polewright.drawing;

import java.util.ArrayList;
import java.util.List;

/** How wide a text comes out. */
final class Lettering {
    // Widest common default for sans-serif (DejaVu Sans) on running lower-case text; others are narrower.
    private static final double EMS_PER_LETTER = 0.6;

    private Lettering() {}

    /** A little more than the width that the usual sans-serif fonts need, user units. */
    static double width(String text, double size) {
        return text.length() * size * EMS_PER_LETTER;
    }

    /** Words broken into lines of at most that many letters; what goes beyond the last line is cut off with a mark. */
    static List<String> wrapped(String text, int letters, int mostLines) {
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
