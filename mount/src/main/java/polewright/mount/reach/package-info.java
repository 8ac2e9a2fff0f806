/**
 * What the mount can point at: skyline, fork, cables, wedge.
 *
 * <pre>
 *   site + rig + horizon ──▶ Reach ──▶ why not (Barrier), or from when to when
 * </pre>
 */
@NullMarked
package polewright.mount.reach;

import org.jspecify.annotations.NullMarked;
