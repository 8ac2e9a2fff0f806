/**
 * Plans a night: which stars to align on, what can be reached and when, in which order.
 *
 * <pre>
 *   site + rig + horizon + axis ──▶ Evening ─┬─▶ alignment stars
 *                                            ├─▶ targets ──▶ plan of the night
 *                                            └─▶ exposures on an upright fork
 * </pre>
 */
@NullMarked
package polewright.planning.tonight;

import org.jspecify.annotations.NullMarked;
