package polewright.alignment.work;

import polewright.sky.angle.Angle;

/** One purpose of tonight's session. */
public sealed interface WorkItem permits VisualObservation, ImagingRun {
    /** The user's name for it. */
    String name();

    /** The part of the sky it uses. */
    SkyRegion region();

    /** The true field, edge to edge; of a camera, as {@link polewright.mount.rig.Camera#field} gives it. */
    Angle field();

    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R visualObservation(VisualObservation item);

        R imagingRun(ImagingRun item);
    }
}
