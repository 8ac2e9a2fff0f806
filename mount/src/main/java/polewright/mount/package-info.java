/**
 * The mount and its polar axis: where the axis points, the rig with its screws, what the mount can reach, and the pointing
 * model.
 *
 * <p>Axes: ENU, x east, y north, z up. The pole that is up at the site is at azimuth 0 (north) or 180° (south) and
 * altitude |φ|. The axis offset is measured on the sky from that pole: <em>east</em> along E = (1, 0, 0), <em>up</em>
 * along (0, −sin φ, cos φ), in both hemispheres.
 */
@NullMarked
package polewright.mount;

import org.jspecify.annotations.NullMarked;
