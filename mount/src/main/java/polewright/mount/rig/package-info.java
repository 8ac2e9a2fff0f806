/** The mount, its screws, its optics and the views they give, and the home position. */
@NullMarked
package polewright.mount.rig;

import org.jspecify.annotations.NullMarked;
