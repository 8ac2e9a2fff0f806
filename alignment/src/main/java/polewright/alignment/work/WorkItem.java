package polewright.alignment.work;

/** One thing that tonight is for. */
public sealed interface WorkItem permits VisualObservation, ImagingRun {
    /** What the user calls it. */
    String name();

    /** Where on the sky. */
    SkyRegion region();
}
