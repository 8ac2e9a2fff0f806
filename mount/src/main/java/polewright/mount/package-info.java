/**
 * The mount and its polar axis: its direction, the rig with its screws, the limits of the mount, and the pointing
 * model.
 *
 * <p>Axes: ENU, x east, y north, z up. The elevated pole is at azimuth 0 (north) or 180° (south) and altitude |φ|. The
 * axis offset is measured on the sky from that pole: <em>east</em> along E = (1, 0, 0), <em>up</em> along (0, −sin φ,
 * cos φ), in both hemispheres.
 */
@NullMarked
package polewright.mount;

import org.jspecify.annotations.NullMarked;
