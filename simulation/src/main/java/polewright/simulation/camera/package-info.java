/**
 * A simulated camera under the real sky: frames for practice and tests, each with its true values.
 * <pre>
 *   StarAtlas ─┐
 *   Exposure ──┴─▶ StarsInView ─▶ StarPainter ─▶ Readout ─▶ RenderedFrame
 *   (camera, path,  (where each     (electrons     (noise,      (Frame as a decoder
 *    site, sky,      star's image    of light)      counts)      would give it, SkyTruth)
 *    time)           runs)
 * </pre>
 *
 * <p>Pixels and camera axes are those of {@link polewright.image} and {@link polewright.sky.attitude}. The centre of
 * the picture, ((width − 1) / 2, (height − 1) / 2), is where the optical axis meets the detector. Charge is in
 * electrons until it is read out in counts. Randomness comes in as an argument, and the same seed gives the same
 * frame whatever the number of processors.
 */
@NullMarked
package polewright.simulation.camera;

import org.jspecify.annotations.NullMarked;
