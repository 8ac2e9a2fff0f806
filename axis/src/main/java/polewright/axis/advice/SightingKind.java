package polewright.axis.advice;

/** Kinds of sighting that can be advised, with what to do in plain words. */
public enum SightingKind {
    COMPASS("read the compass along the axis, toward the pole"),
    SHADOW("measure the angle from a plumb line's shadow to the axis"),
    LEVEL_AND_SCALE("level the base and read the wedge's scale"),
    STILL_POINT("point the tube at the pole, rock it in right ascension, and say where the pole star stands"
            + " from the point that stays still"),
    DRIFT_ON_MERIDIAN("track a star near the meridian, and see how far it drifts north or south"),
    DRIFT_EAST_OR_WEST("track a star in the east or west, and see how far it drifts north or south"),
    FRAMES("take a frame, turn right ascension and nothing else by about 60 degrees, and take another"
            + " (a third from half-way checks the two)");

    private final String words;

    SightingKind(String words) {
        this.words = words;
    }

    /** What to do, as an imperative without a full stop. */
    public String words() {
        return words;
    }
}
