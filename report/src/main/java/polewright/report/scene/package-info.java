/**
 * The content of a night's pictures: selected and worded here, drawn in {@code polewright.drawing}.
 *
 * <pre>
 *   NightState ──NightScene──▶ ZoneScene
 *   NightState ──WedgeScene──▶ SVG
 *   TonightsPlan ──TonightScene──▶ SVG
 *   Seasons ──SeasonsScene──▶ SVG
 * </pre>
 */
@NullMarked
package polewright.report.scene;

import org.jspecify.annotations.NullMarked;
