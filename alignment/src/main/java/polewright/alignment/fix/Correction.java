package polewright.alignment.fix;

/**
 * The Kalman update of the state by one scalar measurement of a sighting.
 *
 * @param byAzimuth partial derivative of the normalised residual, per radian of azimuth
 * @param byAltitude per radian of altitude
 * @param innovation the residual before the update, in sigmas of the measurement
 * @param variance of the innovation
 * @param gain the Kalman gain: how much of the innovation was subtracted from each parameter of the state
 */
record Correction(double byAzimuth, double byAltitude, double innovation, double variance, Gain gain) {
    /** A class rather than a record, because a record would compare its array by identity. */
    static final class Gain {
        private final double[] figures;

        Gain(double[] figures) {
            this.figures = figures;
        }

        double get(int index) {
            return figures[index];
        }
    }
}
