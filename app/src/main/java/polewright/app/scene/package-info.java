/**
 * What of a night its pictures show: it is read here and put into words, drawn in {@code polewright.axis.drawing}.
 *
 * <pre>
 *   NightState ──NightScene──▶ ZoneScene
 *   NightState ──WedgeScene──▶ SVG
 * </pre>
 */
@NullMarked
package polewright.app.scene;

import org.jspecify.annotations.NullMarked;
