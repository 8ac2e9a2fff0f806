package polewright.mount.rig;

/**
 * Direction in which a clockwise turn of a screw moves the upper end of the axis, seen from behind the mount facing the
 * pole.
 */
public enum ScrewSense {
    RIGHT(1),
    LEFT(-1),
    RAISES(1),
    LOWERS(-1);

    private final int sign;

    ScrewSense(int sign) {
        this.sign = sign;
    }

    /** +1 if clockwise increases azimuth (right, in both hemispheres) or altitude. */
    public int sign() {
        return sign;
    }

    /** The opposite direction. */
    public ScrewSense reversed() {
        return switch (this) {
            case RIGHT -> LEFT;
            case LEFT -> RIGHT;
            case RAISES -> LOWERS;
            case LOWERS -> RAISES;
        };
    }

    public boolean isAzimuth() {
        return this == RIGHT || this == LEFT;
    }
}
