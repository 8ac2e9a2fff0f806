/**
 * What of a night its pictures show: it is read here and put into words, drawn in {@code polewright.drawing}.
 *
 * <pre>
 *   NightState ──NightScene──▶ ZoneScene
 *   NightState ──WedgeScene──▶ SVG
 * </pre>
 */
@NullMarked
package polewright.report.scene;

import org.jspecify.annotations.NullMarked;
