package polewright.mount.pointing;

/** What centred stars tell of a mount. */
public sealed interface PointingOutcome {
    /** A model, and how each star agrees with it. */
    record Fitted(PointingModel model) implements PointingOutcome {}

    /** Nothing to go by yet. */
    record NoStars() implements PointingOutcome {}
}
