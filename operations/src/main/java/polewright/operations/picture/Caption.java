package polewright.operations.picture;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.sky.angle.Angle;

/** The caption below a picture: the legend and the text, broken to fit. */
final class Caption {
    private static final int LINE = 46;
    private static final int PADDING = 18;
    private static final int MARGIN = 24;
    private static final int SIGN = 28;
    private static final int BETWEEN = 44;
    private static final Font WORDS = new Font(Font.SANS_SERIF, Font.PLAIN, 33);

    private final Sheet sheet;
    private final List<Entry> key;
    private final int keyLines;
    private final List<String> words;

    /** A legend entry. */
    private record Entry(Sign sign, String meaning, int x, int line) {}

    private enum Sign {
        KNOWN("matched star"),
        UNKNOWN("unmatched"),
        POLE("pole"),
        AXIS("axis, with 95 % region");

        private final String meaning;

        Sign(String meaning) {
            this.meaning = meaning;
        }
    }

    private Caption(Sheet sheet, List<Entry> key, int keyLines, List<String> words) {
        this.sheet = sheet;
        this.key = key;
        this.keyLines = keyLines;
        this.words = words;
    }

    static Caption of(Sheet sheet, List<PointMark.Kind> marks, List<String> words) {
        Graphics2D measuring = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();
        FontMetrics metrics = measuring.getFontMetrics(WORDS);
        measuring.dispose();
        List<Sign> signs = new ArrayList<>(List.of(Sign.KNOWN, Sign.UNKNOWN));
        if (marks.contains(PointMark.Kind.POLE)) {
            signs.add(Sign.POLE);
        }
        if (marks.contains(PointMark.Kind.AXIS)) {
            signs.add(Sign.AXIS);
        }
        List<Entry> key = new ArrayList<>();
        int room = sheet.width() - 2 * MARGIN;
        int x = 0;
        int line = 0;
        for (Sign sign : signs) {
            int width = 2 * SIGN + metrics.stringWidth(sign.meaning);
            if (x > 0 && x + width > room) {
                x = 0;
                line++;
            }
            key.add(new Entry(sign, sign.meaning, x, line));
            x += width + BETWEEN;
        }
        List<String> broken = new ArrayList<>();
        words.forEach(text -> addBroken(broken, text, room, metrics));
        return new Caption(sheet, key, line + 1, broken);
    }

    int height() {
        return (keyLines + words.size()) * LINE + 2 * PADDING;
    }

    void draw(Graphics2D canvas) {
        canvas.setColor(Ink.GROUND);
        canvas.fillRect(0, sheet.height(), sheet.width(), height());
        canvas.setFont(WORDS);
        int base = sheet.height() + PADDING + LINE - 12;
        for (Entry entry : key) {
            draw(canvas, entry, base + entry.line() * LINE);
        }
        canvas.setColor(Ink.WORDS);
        for (int i = 0; i < words.size(); i++) {
            canvas.drawString(words.get(i), MARGIN, base + (keyLines + i) * LINE);
        }
    }

    private static void draw(Graphics2D canvas, Entry entry, int base) {
        Point2D at = new Point2D.Double(MARGIN + entry.x() + SIGN / 2.0, base - 11.0);
        switch (entry.sign()) {
            case KNOWN -> Glyphs.knownStar(canvas, at, 11);
            case UNKNOWN -> Glyphs.unknownStar(canvas, new Point2D.Double(at.getX(), at.getY() - 8));
            case POLE -> Glyphs.pole(canvas, at, 0.7);
            case AXIS -> Glyphs.axis(canvas, at);
        }
        canvas.setColor(Ink.FAINT_WORDS);
        canvas.drawString(entry.meaning(), MARGIN + entry.x() + SIGN + 12, base);
    }

    private static void addBroken(List<String> broken, String text, int room, FontMetrics metrics) {
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            if (!line.isEmpty() && metrics.stringWidth(line + " " + word) > room) {
                broken.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        broken.add(line.toString());
    }

    /** An angle in a few characters. */
    static String size(Angle angle) {
        return angle.degrees() >= 1
                ? String.format(Locale.ROOT, "%.1f°", angle.degrees())
                : String.format(Locale.ROOT, "%.0f′", angle.arcminutes());
    }
}
