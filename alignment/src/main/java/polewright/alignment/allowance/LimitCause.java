package polewright.alignment.allowance;

/** What goes wrong just outside an edge of the zone. */
public enum LimitCause {
    DRIFT("stars trail"),
    CORNER("corners trail"),
    LEAVES_FRAME("leaves the frame"),
    LEAVES_FIELD("leaves the field"),
    GO_TO("go-to misses"),
    MOUNT("60′ at most");

    private final String words;

    LimitCause(String words) {
        this.words = words;
    }

    /** A short label for an edge in a picture. */
    public String words() {
        return words;
    }
}
