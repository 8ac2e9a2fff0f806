/**
 * The paper under all pictures, as SVG text: letters, lines and labels that keep clear of each other. Each picture is
 * in a package of its subject, and a pure function of its scene and a palette.
 *
 * <pre>
 *   Scale, Scale ──▶ Plot (levels, ticks, curves)
 *                      │
 *          Palette ──▶ Sheet (heading, lines, marks, names) ──▶ Svg ──▶ SVG text
 *                      │
 *                      └──▶ LabelPlacer (where a label fits) ──▶ Box, Lettering, Strokes
 *
 *   .mount     the rig: home position, wedge and screws, its lengths
 *   .sighting  what to measure in a sighting
 *   .zone      the tolerance zone and the axis
 *   .strip     altitudes along the horizon and through the night, the axis over seasons
 *   .chart     the sky around a target in an optic
 *   .frame     what lies over a frame's image
 * </pre>
 */
@NullMarked
package polewright.drawing;

import org.jspecify.annotations.NullMarked;
