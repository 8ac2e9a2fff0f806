package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.sighting.AxisModel;
import polewright.mount.AxisPointing;
import polewright.sky.angle.Angle;

/** A sighting's normalised residuals, linearised about one azimuth and altitude of the axis. */
final class LinearisedSighting {
    private static final double STEP_RAD = 1e-6;
    private static final double LEAST_VARIANCE = 1e-9;

    private final double azimuthRad;
    private final double altitudeRad;
    // (predicted − measured) / sigma at that point, and its derivatives per radian of each.
    private final double[] residual;
    private final double[] byAzimuth;
    private final double[] byAltitude;

    LinearisedSighting(
            double azimuthRad, double altitudeRad, double[] residual, double[] byAzimuth, double[] byAltitude) {
        this.azimuthRad = azimuthRad;
        this.altitudeRad = altitudeRad;
        this.residual = residual;
        this.byAzimuth = byAzimuth;
        this.byAltitude = byAltitude;
    }

    /**
     * The axis directions at which models are evaluated for finite differences about a point; ENU unit vectors.
     *
     * @param here at the point
     * @param swung one step on in azimuth
     * @param raised one step up in altitude
     */
    record Probes(LinearisationPoint about, Vector3D here, Vector3D swung, Vector3D raised) {
        static Probes about(LinearisationPoint point) {
            double azimuth = point.azimuthRad();
            double altitude = point.altitudeRad();
            return new Probes(
                    point,
                    axis(azimuth, altitude),
                    axis(azimuth + STEP_RAD, altitude),
                    axis(azimuth, altitude + STEP_RAD));
        }

        private static Vector3D axis(double azimuthRad, double altitudeRad) {
            return AxisPointing.of(new Angle(azimuthRad), new Angle(altitudeRad))
                    .elevatedEnd();
        }
    }

    static LinearisedSighting of(AxisModel model, Probes probes) {
        double[] here = model.residual(probes.here());
        return new LinearisedSighting(
                probes.about().azimuthRad(),
                probes.about().altitudeRad(),
                here,
                slope(here, model.residual(probes.swung())),
                slope(here, model.residual(probes.raised())));
    }

    static LinearisedSighting of(AxisModel model, AxisState state) {
        return of(model, LinearisationPoint.of(state));
    }

    static LinearisedSighting of(AxisModel model, LinearisationPoint about) {
        return of(model, Probes.about(about));
    }

    /** The same with its sigmas multiplied by a factor. */
    LinearisedSighting over(double scatter) {
        return scatter == 1
                ? this
                : new LinearisedSighting(
                        azimuthRad,
                        altitudeRad,
                        divided(residual, scatter),
                        divided(byAzimuth, scatter),
                        divided(byAltitude, scatter));
    }

    private static double[] divided(double[] figures, double by) {
        return Arrays.stream(figures).map(figure -> figure / by).toArray();
    }

    int figures() {
        return residual.length;
    }

    double slopeByAzimuth(int figure) {
        return byAzimuth[figure];
    }

    double slopeByAltitude(int figure) {
        return byAltitude[figure];
    }

    double residual(int figure) {
        return residual[figure];
    }

    /** The state updated by this sighting; its scalar measurements are independent and of unit variance. */
    AxisState update(AxisState state) {
        return update(state, new ArrayList<>());
    }

    /**
     * The same.
     *
     * @param corrections receives the update by each scalar measurement
     */
    AxisState update(AxisState state, List<Correction> corrections) {
        int size = AxisState.SIZE;
        double[] mean = state.copyOfMean();
        double[] covariance = state.copyOfCovariance();
        for (int figure = 0; figure < residual.length; figure++) {
            if (byAzimuth[figure] == 0 && byAltitude[figure] == 0) {
                // No information about the axis, as in the second row of an interval with one sighting.
                continue;
            }
            double[] gainTimesVariance = new double[size];
            for (int i = 0; i < size; i++) {
                gainTimesVariance[i] = covariance[AxisState.at(i, AxisState.AZIMUTH)] * byAzimuth[figure]
                        + covariance[AxisState.at(i, AxisState.ALTITUDE)] * byAltitude[figure];
            }
            double variance = 1
                    + byAzimuth[figure] * gainTimesVariance[AxisState.AZIMUTH]
                    + byAltitude[figure] * gainTimesVariance[AxisState.ALTITUDE];
            double innovation = residualAt(figure, mean[AxisState.AZIMUTH], mean[AxisState.ALTITUDE]);
            double[] gain = new double[size];
            int entry = 0;
            for (int i = 0; i < size; i++) {
                double ofThis = gainTimesVariance[i] / variance;
                gain[i] = ofThis;
                mean[i] -= ofThis * innovation;
                for (int j = 0; j < size; j++) {
                    covariance[entry] -= ofThis * gainTimesVariance[j];
                    entry++;
                }
            }
            corrections.add(new Correction(
                    byAzimuth[figure], byAltitude[figure], innovation, variance, new Correction.Gain(gain)));
        }
        return new AxisState(state.site(), mean, covariance, state.senses());
    }

    /** The axis after {@link #update}, without computing the rest of the state. */
    LinearisationPoint pointAfter(AxisState before) {
        double azimuth = before.mean(AxisState.AZIMUTH);
        double altitude = before.mean(AxisState.ALTITUDE);
        double ofAzimuth = before.covariance(AxisState.AZIMUTH, AxisState.AZIMUTH);
        // Equal apart from rounding, as in the matrix.
        double azimuthWithAltitude = before.covariance(AxisState.AZIMUTH, AxisState.ALTITUDE);
        double altitudeWithAzimuth = before.covariance(AxisState.ALTITUDE, AxisState.AZIMUTH);
        double ofAltitude = before.covariance(AxisState.ALTITUDE, AxisState.ALTITUDE);
        for (int figure = 0; figure < residual.length; figure++) {
            if (byAzimuth[figure] == 0 && byAltitude[figure] == 0) {
                continue;
            }
            double azimuthTimesVariance = ofAzimuth * byAzimuth[figure] + azimuthWithAltitude * byAltitude[figure];
            double altitudeTimesVariance = altitudeWithAzimuth * byAzimuth[figure] + ofAltitude * byAltitude[figure];
            double variance = 1 + byAzimuth[figure] * azimuthTimesVariance + byAltitude[figure] * altitudeTimesVariance;
            double innovation = residualAt(figure, azimuth, altitude);
            double azimuthGain = azimuthTimesVariance / variance;
            double altitudeGain = altitudeTimesVariance / variance;
            azimuth -= azimuthGain * innovation;
            altitude -= altitudeGain * innovation;
            ofAzimuth -= azimuthGain * azimuthTimesVariance;
            azimuthWithAltitude -= azimuthGain * altitudeTimesVariance;
            altitudeWithAzimuth -= altitudeGain * azimuthTimesVariance;
            ofAltitude -= altitudeGain * altitudeTimesVariance;
        }
        return new LinearisationPoint(azimuth, altitude);
    }

    /** What this sighting adds to the night's χ², from the state before {@link #update}. */
    double addedChiSquared(AxisState before) {
        return squaredInnovation(before);
    }

    /** The share of its information that is about east and west, 0 to 1; the rest is about altitude. */
    double eastShare(double cosLatitude) {
        double eastSquare = 0;
        double upSquare = 0;
        for (int figure = 0; figure < residual.length; figure++) {
            eastSquare += Math.pow(byAzimuth[figure] / cosLatitude, 2);
            upSquare += Math.pow(byAltitude[figure], 2);
        }
        return eastSquare / (eastSquare + upSquare);
    }

    /**
     * Squared innovation against a state that has <em>not</em> used this sighting: χ² with one degree of freedom for
     * each of its scalar measurements.
     */
    double squaredInnovation(AxisState other) {
        return quadratic(other, 1);
    }

    /**
     * The same from a state that <em>has</em> used it: the reduction of the night's total χ² if it were left out.
     */
    double squaredInnovationWithout(AxisState including) {
        return quadratic(including, -1);
    }

    private double quadratic(AxisState state, int sign) {
        double first = residualAt(0, state);
        double firstVariance = Math.max(LEAST_VARIANCE, 1 + sign * spread(state, 0, 0));
        if (residual.length == 1) {
            return first * first / firstVariance;
        }
        // The second measurement, conditional on the first.
        double both = sign * spread(state, 0, 1);
        double second = residualAt(1, state) - both / firstVariance * first;
        double secondVariance = Math.max(LEAST_VARIANCE, 1 + sign * spread(state, 1, 1)) - both * both / firstVariance;
        return first * first / firstVariance + second * second / Math.max(LEAST_VARIANCE, secondVariance);
    }

    private double spread(AxisState state, int one, int other) {
        double withAzimuth = state.covariance(AxisState.AZIMUTH, AxisState.AZIMUTH) * byAzimuth[other]
                + state.covariance(AxisState.AZIMUTH, AxisState.ALTITUDE) * byAltitude[other];
        double withAltitude = state.covariance(AxisState.ALTITUDE, AxisState.AZIMUTH) * byAzimuth[other]
                + state.covariance(AxisState.ALTITUDE, AxisState.ALTITUDE) * byAltitude[other];
        return byAzimuth[one] * withAzimuth + byAltitude[one] * withAltitude;
    }

    private double residualAt(int figure, AxisState state) {
        return residualAt(figure, state.mean(AxisState.AZIMUTH), state.mean(AxisState.ALTITUDE));
    }

    private double residualAt(int figure, double azimuth, double altitude) {
        return residual[figure]
                + byAzimuth[figure] * (azimuth - azimuthRad)
                + byAltitude[figure] * (altitude - altitudeRad);
    }

    /** One-sided difference: over a step of 0.2″ it is as accurate as the residuals themselves. */
    private static double[] slope(double[] before, double[] after) {
        double[] slope = new double[after.length];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = (after[i] - before[i]) / STEP_RAD;
        }
        return slope;
    }
}
