package polewright.alignment.sighting;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisEstimate;

/**
 * What one sighting says of the axis: how far a supposed axis is from agreeing with it.
 *
 * <p>The stars' directions are already worked out, so an evaluation is a few multiplications and has no side effects.
 */
public interface AxisModel {
    /** Number of independent figures in the sighting: 1 or 2. */
    int size();

    /**
     * Predicted minus measured, each divided by its standard deviation.
     *
     * @param elevatedEnd ENU unit vector of the supposed axis, the end toward the pole that is up
     * @return {@link #size()} figures, of unit variance when the supposed axis is the true one
     */
    double[] residual(Vector3D elevatedEnd);

    /** The axis itself, found with its uncertainty. */
    static AxisModel of(AxisEstimate estimate) {
        return new AxisModel() {
            @Override
            public int size() {
                return 2;
            }

            @Override
            public double[] residual(Vector3D elevatedEnd) {
                return estimate.normalisedDistance(elevatedEnd);
            }
        };
    }

    /** A sighting of one figure. */
    static AxisModel ofOne(java.util.function.ToDoubleFunction<Vector3D> residual) {
        return new AxisModel() {
            @Override
            public int size() {
                return 1;
            }

            @Override
            public double[] residual(Vector3D elevatedEnd) {
                return new double[] {residual.applyAsDouble(elevatedEnd)};
            }
        };
    }
}
