/**
 * What a finder or an eyepiece shows of the sky round a target, as its user sees it.
 *
 * <pre>
 *   moment + target + optic's field and view ──▶ FieldChart ──▶ (axis.drawing) a picture
 * </pre>
 *
 * <p>Places in a chart are (right, up) in the view, angles from the middle as on the sphere (azimuthal equidistant).
 */
@NullMarked
package polewright.drawing.chart;

import org.jspecify.annotations.NullMarked;
