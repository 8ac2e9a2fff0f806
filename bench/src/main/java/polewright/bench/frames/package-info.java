/**
 * Benches of the frame pipeline, measured on rendered frames with known true values: seeds in, plain lines out, and
 * an exit status of 1 if a criterion of accuracy or success is missed.
 * <pre>
 *   seed ──▶ RandomFrame ──▶ StarFinder ──▶ FrameMatcher ──▶ compared with SkyTruth
 *            (camera, sky,                                   (StarTruth, Places)
 *             place, hint)
 * </pre>
 */
@NullMarked
package polewright.bench.frames;

import org.jspecify.annotations.NullMarked;
