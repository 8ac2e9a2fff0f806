package polewright.mount.pointing;

/** The result of fitting centred stars. */
public sealed interface PointingOutcome {
    /** A fitted model. */
    record Fitted(PointingModel model) implements PointingOutcome {}

    /** No centrings yet. */
    record NoStars() implements PointingOutcome {}
}
