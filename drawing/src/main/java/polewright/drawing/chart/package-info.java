/**
 * The sky around a target as seen in a finder or an eyepiece.
 *
 * <pre>
 *   moment + target + optic's field and view ──▶ FieldChart ──▶ FieldChartDrawing, a picture
 * </pre>
 *
 * <p>Positions in a chart are (right, up) in the view, in angles from the centre as on the sphere (azimuthal
 * equidistant).
 */
@NullMarked
package polewright.drawing.chart;

import org.jspecify.annotations.NullMarked;
