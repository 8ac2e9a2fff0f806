/**
 * What the mount can point at: local horizon, fork, cables, wedge.
 *
 * <pre>
 *   site + rig + horizon ──▶ PointingLimits ──▶ the Barrier, or windows of time
 * </pre>
 */
@NullMarked
package polewright.mount.reach;

import org.jspecify.annotations.NullMarked;
