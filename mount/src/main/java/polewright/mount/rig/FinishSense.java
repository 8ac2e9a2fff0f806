package polewright.mount.rig;

/** The direction in which a screw's last turn must go, so that its backlash is always taken up on the same side. */
public enum FinishSense {
    /** Either direction. */
    EITHER,
    CLOCKWISE,
    COUNTER_CLOCKWISE;

    /** Whether a move whose last turns have this sign, clockwise positive, finished in this direction. */
    public boolean isSatisfiedBy(double lastTurns) {
        return switch (this) {
            case EITHER -> true;
            case CLOCKWISE -> lastTurns >= 0;
            case COUNTER_CLOCKWISE -> lastTurns <= 0;
        };
    }
}
