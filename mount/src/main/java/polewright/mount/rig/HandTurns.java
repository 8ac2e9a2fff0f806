package polewright.mount.rig;

/**
 * One screw turned by hand: straight to the goal, or past it and back, to finish against the backlash.
 *
 * @param net total turns, clockwise positive
 * @param back the last leg, clockwise positive; 0 if there is none. The first leg is {@code net − back}
 * @param sigma 1 sigma of {@code net}, turns; 0 if they were counted, so that the rig's value for a hand applies
 */
public record HandTurns(double net, double back, double sigma) {
    /** No turn. */
    public static final HandTurns NONE = new HandTurns(0, 0);

    /** Counted turns. */
    public HandTurns(double net, double back) {
        this(net, back, 0);
    }

    /** A single leg. */
    public static HandTurns straight(double turns) {
        return new HandTurns(turns, 0);
    }

    /** Every leg in the opposite direction. */
    public HandTurns reversed() {
        return new HandTurns(-net, -back, sigma);
    }

    /** The first leg. */
    public double outward() {
        return net - back;
    }

    /** Whether the last leg goes against the first. */
    public boolean isPastAndBack() {
        return outward() * back < 0;
    }

    public boolean isNone() {
        return net == 0 && back == 0;
    }

    /** Direction of the last leg: +1 clockwise, −1 counter-clockwise, 0 if not turned. */
    public double lastSense() {
        return Math.signum(back == 0 ? net : back);
    }
}
