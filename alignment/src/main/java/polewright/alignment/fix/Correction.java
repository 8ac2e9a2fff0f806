package polewright.alignment.fix;

/**
 * What one figure of a sighting did to the state.
 *
 * @param byAzimuth how the figure's residual grows per radian of azimuth
 * @param byAltitude per radian of altitude
 * @param innovation the residual before the correction, in sigmas of the figure
 * @param variance of the innovation
 * @param gain how much of the innovation was taken off each of the state's figures
 */
record Correction(double byAzimuth, double byAltitude, double innovation, double variance, Gain gain) {
    /** A class, since a record would not compare what is in its array. */
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
