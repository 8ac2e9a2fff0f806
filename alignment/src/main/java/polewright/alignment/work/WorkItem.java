package polewright.alignment.work;

/** One purpose of tonight's session. */
public sealed interface WorkItem permits VisualObservation, ImagingRun {
    /** The user's name for it. */
    String name();

    /** The part of the sky it uses. */
    SkyRegion region();
}
