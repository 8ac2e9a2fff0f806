/**
 * What tonight is for: a list of looks and shots, each with what it asks of the mount.
 *
 * <pre>
 *   Work ── WorkItem ─┬─ Look   an eyepiece: the object is to stay in the field, a go-to to land in it
 *                     └─ Shot   a camera: stars are to stay round, in the middle and in the corner
 *   each WorkItem ── SkyRegion: where on the sky it happens
 * </pre>
 */
@NullMarked
package polewright.alignment.work;

import org.jspecify.annotations.NullMarked;
