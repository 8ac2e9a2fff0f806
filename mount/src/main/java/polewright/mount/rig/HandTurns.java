package polewright.mount.rig;

/**
 * One screw turned by hand: straight there, or first past the goal and then back, so that it ends against its play.
 *
 * @param net all of it together, clockwise positive
 * @param back the last leg, clockwise positive; 0 when there is none. The hand first turns {@code net − back}
 * @param sigma how well {@code net} is known, turns, 1 sigma; 0 when they were counted, so that the rig's word for a hand
 *     holds
 */
public record HandTurns(double net, double back, double sigma) {
    /** Not turned. */
    public static final HandTurns NONE = new HandTurns(0, 0);

    /** Counted. */
    public HandTurns(double net, double back) {
        this(net, back, 0);
    }

    /** Turned in one go. */
    public static HandTurns straight(double turns) {
        return new HandTurns(turns, 0);
    }

    /** Every leg the other way. */
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

    /** The way in which the screw was left: +1 clockwise, −1 counter-clockwise, 0 when it was not turned. */
    public double lastSense() {
        return Math.signum(back == 0 ? net : back);
    }
}
