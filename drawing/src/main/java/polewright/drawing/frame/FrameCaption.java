package polewright.drawing.frame;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Canvas;
import polewright.drawing.Lettering;
import polewright.drawing.Palette;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;

/** The caption below a frame's picture in a file: the meaning of its marks, and wrapped lines of text. */
public final class FrameCaption {
    private static final double MARGIN = 24;

    private final FrameScene frame;
    private final double letters;
    private final List<Entry> key = new ArrayList<>();
    private final List<String> lines = new ArrayList<>();
    private int keyLines = 1;

    private record Entry(Sign sign, double x, int line) {}

    private enum Sign {
        MATCHED("matched star"),
        UNMATCHED("unmatched"),
        POLE("pole"),
        AXIS("axis, with 95 % region");

        private final String meaning;

        Sign(String meaning) {
            this.meaning = meaning;
        }
    }

    public FrameCaption(FrameScene frame, List<String> words) {
        this.frame = frame;
        this.letters = FrameDrawing.letters(frame.width());
        double room = frame.width() - 2 * MARGIN;
        double x = 0;
        for (Sign sign : Sign.values()) {
            if (sign == Sign.AXIS && frame.axis().isEmpty()) {
                continue;
            }
            double width = 2 * letters + Lettering.width(sign.meaning, letters);
            if (x > 0 && x + width > room) {
                x = 0;
                keyLines++;
            }
            key.add(new Entry(sign, x, keyLines));
            x += width + letters;
        }
        int most = (int) (room / Lettering.width("n", letters));
        words.forEach(text -> lines.addAll(Lettering.wrapped(text, most, Integer.MAX_VALUE)));
    }

    /** Points down. */
    public int height() {
        return (int) Math.ceil(line() * (keyLines + lines.size()) + letters);
    }

    /** Draws it below the frame. */
    public void draw(Canvas canvas, Palette palette) {
        double top = frame.height();
        double bottom = top + height();
        canvas.polygon(
                Look.filled(palette.background(), "none", 0),
                new Vector2D(0, top),
                new Vector2D(frame.width(), top),
                new Vector2D(frame.width(), bottom),
                new Vector2D(0, bottom));
        for (Entry entry : key) {
            double baseline = top + line() * entry.line();
            Vector2D middle = new Vector2D(MARGIN + entry.x() + letters / 2, baseline - letters / 3);
            draw(canvas, palette, entry.sign(), middle);
            Vector2D at = new Vector2D(middle.getX() + letters * 1.2, baseline);
            canvas.text(at, Anchor.START, letters, palette.text(), entry.sign().meaning);
        }
        for (int i = 0; i < lines.size(); i++) {
            Vector2D at = new Vector2D(MARGIN, top + line() * (keyLines + i + 1));
            canvas.text(at, Anchor.START, letters, palette.text(), lines.get(i));
        }
    }

    private void draw(Canvas canvas, Palette palette, Sign sign, Vector2D middle) {
        switch (sign) {
            case MATCHED -> FrameDrawing.matched(canvas, palette, middle, letters / 3);
            case UNMATCHED -> FrameDrawing.unmatched(canvas, palette, middle.subtract(new Vector2D(0, letters / 4)));
            case POLE -> FrameDrawing.pole(canvas, palette, middle, letters / 3);
            case AXIS -> FrameDrawing.axis(canvas, palette, middle, letters / 3);
        }
    }

    private double line() {
        return 1.3 * letters;
    }
}
