/** The mount, its screws, its optics and their image orientation, and the home position. */
@NullMarked
package polewright.mount.rig;

import org.jspecify.annotations.NullMarked;
