package polewright.report.text;

import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The kind of a line; a terminal shows it as the first word. */
public enum Tag {
    /** No word. */
    PLAIN,
    /** A command to type, on a line of its own. */
    TYPED,
    SIGHT,
    TURN,
    MOVE,
    SWING,
    TILT,
    LOOSEN,
    CLAMP,
    WAIT,
    STOP,
    DONE,
    STAR,
    SKY,
    WHY,
    THEN,
    ELSE,
    NEXT,
    NOTE,
    CARE,
    DOUBT,
    ZONE,
    AIM,
    WORK,
    FIND,
    SWEEP;

    private static final int WIDTH = 6;
    private static final Set<Tag> WITHOUT_WORD = Set.of(PLAIN, TYPED);
    private static final Set<Tag> FOR_TYPING = Set.of(TYPED, THEN, ELSE);

    /** A line of this kind. */
    public Line line(String text) {
        return new Line(this, text);
    }

    /** Lines of this kind. */
    public List<Line> lines(List<String> texts) {
        return texts.stream().map(this::line).toList();
    }

    /** What is in front of the text in a terminal: {@code "WHY   "}; empty for a line without a word. */
    String prefix() {
        if (WITHOUT_WORD.contains(this)) {
            return "";
        }
        return name() + " ".repeat(Math.max(1, WIDTH - name().length()));
    }

    /** Its word on a page: {@code Care}; empty for a line without one. */
    public String word() {
        return WITHOUT_WORD.contains(this)
                ? ""
                : name().charAt(0) + name().substring(1).toLowerCase(Locale.ROOT);
    }

    /** Whether it says what to type, and so is for a terminal only. */
    public boolean isForTyping() {
        return FOR_TYPING.contains(this);
    }
}
