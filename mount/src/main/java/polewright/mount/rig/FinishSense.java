package polewright.mount.rig;

/** The way a screw is to be turned last, so that its play is always taken up on the same side. */
public enum FinishSense {
    /** Both ways are alike. */
    EITHER,
    CLOCKWISE,
    COUNTER_CLOCKWISE;

    /** Whether a move that ends with turns of this sign, clockwise positive, has ended well. */
    public boolean isKeptBy(double lastTurns) {
        return switch (this) {
            case EITHER -> true;
            case CLOCKWISE -> lastTurns >= 0;
            case COUNTER_CLOCKWISE -> lastTurns <= 0;
        };
    }
}
