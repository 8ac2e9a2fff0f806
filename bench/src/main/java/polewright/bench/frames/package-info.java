/**
 * What the frames room must show, measured on rendered frames whose truth is known: seeds in, plain lines out, and an
 * exit status of 1 where a criterion of accuracy or success is missed.
 *
 * <pre>
 *   seed ──▶ RandomFrame ──▶ StarFinder ──▶ FrameMatcher ──▶ held against SkyTruth
 *            (camera, sky,                                   (StarTruth, Places)
 *             place, hint)
 * </pre>
 */
@NullMarked
package polewright.bench.frames;

import org.jspecify.annotations.NullMarked;
