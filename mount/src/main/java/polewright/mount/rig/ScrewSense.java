package polewright.mount.rig;

/** Where a clockwise turn of a screw takes the upper end of the axis, for someone behind the mount who faces the pole. */
public enum ScrewSense {
    RIGHT(1),
    LEFT(-1),
    RAISES(1),
    LOWERS(-1);

    private final int sign;

    ScrewSense(int sign) {
        this.sign = sign;
    }

    /** +1 when clockwise increases azimuth (right, in both hemispheres) or altitude. */
    public int sign() {
        return sign;
    }

    /** The other way round. */
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
