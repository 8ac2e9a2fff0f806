/**
 * What tonight is for: visual observations and imaging runs, each with its requirements on the mount.
 *
 * <pre>
 *   Work ── WorkItem ─┬─ VisualObservation   the object stays in the field, a go-to lands in it
 *                     └─ ImagingRun          stars stay round, in the middle and in the corner
 *   each WorkItem ── SkyRegion: the part of the sky it uses
 * </pre>
 */
@NullMarked
package polewright.alignment.work;

import org.jspecify.annotations.NullMarked;
