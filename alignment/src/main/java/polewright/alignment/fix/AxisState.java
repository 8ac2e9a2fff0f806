package polewright.alignment.fix;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * The state vector of the axis and the screws: mean and covariance of six parameters.
 *
 * <pre>
 *   0 azimuth of the elevated end, rad      3 altitude screw: relative error of its effect
 *   1 altitude of the elevated end, rad     4 azimuth screw: altitude moved per unit of azimuth
 *   2 azimuth screw: relative error         5 altitude screw: azimuth moved per unit of altitude
 * </pre>
 *
 * <p>The state holds azimuth and altitude rather than the offset because a screw turn of any size simply adds to them.
 * The last two parameters describe a leaning base.
 */
public final class AxisState {
    static final int SIZE = 6;
    static final int AZIMUTH = 0;
    static final int ALTITUDE = 1;
    static final int AZIMUTH_GAIN = 2;
    static final int ALTITUDE_GAIN = 3;
    static final int AZIMUTH_INTO_ALTITUDE = 4;
    static final int ALTITUDE_INTO_AZIMUTH = 5;

    /** Before any sighting the axis is within about 15° of the pole: 8° 1 sigma each way on the sky. */
    public static final Angle PRIOR_SIGMA = Angle.ofDegrees(8);

    /** Squareness error of the altitude hinge to the azimuth pivot, 1 sigma (common practice). */
    static final Angle HINGE_SQUARE_TO = Angle.ofDegrees(0.3);

    // Azimuth is nearly undefined where the pole is overhead; this keeps its prior finite there.
    private static final double LEAST_COS_LATITUDE = 0.1;
    private static final double LEAST_LEAN_RAD = 1e-3;
    private static final double DERIVATIVE_STEP_RAD = 1e-6;

    private final Site site;
    // One flat array for the six rows: at this size, allocation dominates the time that a night's solution takes.
    private final double[] mean;
    private final double[] covariance;
    private final TurnSenses senses;

    /**
     * Keeps the arrays without copying: the caller must not change them afterwards.
     *
     * @param covariance row-major
     */
    AxisState(Site site, double[] mean, double[] covariance, TurnSenses senses) {
        this.site = site;
        this.mean = mean;
        this.covariance = covariance;
        this.senses = senses;
    }

    /** The prior, before anything is measured. */
    public static AxisState prior(Site site, Rig rig) {
        double cosLat = Math.max(LEAST_COS_LATITUDE, site.latitude().cos());
        double lean = leanSigmaRad(rig);
        double[] mean = new double[SIZE];
        mean[AZIMUTH] = site.poleAzimuth().radians();
        mean[ALTITUDE] = site.poleAltitude().radians();
        ScrewGains screws = ScrewGains.ofRig(rig);
        mean[AZIMUTH_GAIN] = screws.azimuthFactor() - 1;
        mean[ALTITUDE_GAIN] = screws.altitudeFactor() - 1;
        double[] covariance = new double[SIZE * SIZE];
        setVariance(covariance, AZIMUTH, PRIOR_SIGMA.radians() / cosLat);
        setVariance(covariance, ALTITUDE, PRIOR_SIGMA.radians());
        setVariance(covariance, AZIMUTH_GAIN, Math.hypot(screws.azimuthSigma(), leanOnAzimuth(site, rig)));
        setVariance(covariance, ALTITUDE_GAIN, screws.altitudeSigma());
        // A base leaning right by β lowers the axis by β per unit of azimuth to the right, and moves it β / cos² to the
        // right per unit of altitude; so does a hinge that is out of square.
        double perLean = 1 / (cosLat * cosLat);
        setVariance(covariance, AZIMUTH_INTO_ALTITUDE, lean);
        setVariance(covariance, ALTITUDE_INTO_AZIMUTH, perLean * Math.hypot(lean, HINGE_SQUARE_TO.radians()));
        covariance[at(AZIMUTH_INTO_ALTITUDE, ALTITUDE_INTO_AZIMUTH)] = -lean * lean * perLean;
        covariance[at(ALTITUDE_INTO_AZIMUTH, AZIMUTH_INTO_ALTITUDE)] = -lean * lean * perLean;
        return new AxisState(site, mean, covariance, TurnSenses.NOT_TURNED);
    }

    /**
     * Collapses a mixture of competing states into one Gaussian with the same mean and covariance. The last turn senses
     * are those of the first state.
     *
     * @param states at least one, all at the same site
     * @param weights one per state, summing to 1
     */
    static AxisState mixture(List<AxisState> states, double[] weights) {
        AxisState first = states.get(0);
        if (states.size() == 1) {
            return first;
        }
        double[] mean = new double[SIZE];
        for (int k = 0; k < weights.length; k++) {
            for (int i = 0; i < SIZE; i++) {
                // Relative to the first, so that azimuths on either side of the 360° wrap stay together.
                mean[i] += weights[k] * difference(states.get(k), first.mean, i);
            }
        }
        for (int i = 0; i < SIZE; i++) {
            mean[i] += first.mean[i];
        }
        double[] covariance = new double[SIZE * SIZE];
        for (int k = 0; k < weights.length; k++) {
            AxisState state = states.get(k);
            for (int i = 0; i < SIZE; i++) {
                for (int j = 0; j < SIZE; j++) {
                    covariance[at(i, j)] += weights[k]
                            * (state.covariance(i, j) + difference(state, mean, i) * difference(state, mean, j));
                }
            }
        }
        return new AxisState(first.site, mean, covariance, first.senses);
    }

    private static double difference(AxisState state, double[] mean, int index) {
        double difference = state.mean[index] - mean[index];
        return index == AZIMUTH ? new Angle(difference).wrappedSigned().radians() : difference;
    }

    /** A leaning base also scales the azimuth moved per turn, through tan(altitude); 1 sigma of that relative error. */
    static double leanOnAzimuth(Site site, Rig rig) {
        double cosLat = Math.max(LEAST_COS_LATITUDE, site.latitude().cos());
        return leanSigmaRad(rig) * site.poleAltitude().sin() / cosLat;
    }

    private static double leanSigmaRad(Rig rig) {
        return Math.max(LEAST_LEAN_RAD, rig.levelSigma().radians());
    }

    /** The same axis with screw sigmas widened by the ratio of two priors; a ratio below 1 has no effect. */
    AxisState doubting(AxisState nominal, AxisState doubted) {
        double[] wider = new double[SIZE * SIZE];
        for (int i = 0; i < SIZE; i++) {
            for (int j = 0; j < SIZE; j++) {
                wider[at(i, j)] = covariance(i, j) * times(nominal, doubted, i) * times(nominal, doubted, j);
            }
        }
        return new AxisState(site, mean, wider, senses);
    }

    private static double times(AxisState nominal, AxisState doubted, int index) {
        return index < AZIMUTH_GAIN ? 1 : Math.max(1, doubted.sigma(index) / nominal.sigma(index));
    }

    public AxisPointing axis() {
        return AxisPointing.of(new Angle(mean[AZIMUTH]), new Angle(mean[ALTITUDE]));
    }

    public AxisOffset offset() {
        return axis().offset(site);
    }

    /** Covariance of {@link #offset}. */
    public OffsetCovariance offsetCovariance() {
        AxisOffset perAzimuth = nudged(AZIMUTH, DERIVATIVE_STEP_RAD).minus(nudged(AZIMUTH, -DERIVATIVE_STEP_RAD));
        AxisOffset perAltitude = nudged(ALTITUDE, DERIVATIVE_STEP_RAD).minus(nudged(ALTITUDE, -DERIVATIVE_STEP_RAD));
        double[] east = {
            perAzimuth.east().arcminutes() / (2 * DERIVATIVE_STEP_RAD),
            perAltitude.east().arcminutes() / (2 * DERIVATIVE_STEP_RAD)
        };
        double[] up = {
            perAzimuth.up().arcminutes() / (2 * DERIVATIVE_STEP_RAD),
            perAltitude.up().arcminutes() / (2 * DERIVATIVE_STEP_RAD)
        };
        return new OffsetCovariance(quadratic(east, east), quadratic(east, up), quadratic(up, up));
    }

    /** The quadratic form aᵀ P b over azimuth and altitude. */
    private double quadratic(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                sum += a[i] * covariance(i, j) * b[j];
            }
        }
        return sum;
    }

    public ScrewGains gains() {
        return new ScrewGains(
                1 + mean[AZIMUTH_GAIN],
                1 + mean[ALTITUDE_GAIN],
                mean[AZIMUTH_INTO_ALTITUDE],
                mean[ALTITUDE_INTO_AZIMUTH],
                sigma(AZIMUTH_GAIN),
                sigma(ALTITUDE_GAIN));
    }

    /** The state after turns by hand, clockwise positive, each made in one go. */
    public AxisState afterTurns(Rig rig, double azimuthTurns, double altitudeTurns) {
        return afterTurns(rig, HandTurns.straight(azimuthTurns), HandTurns.straight(altitudeTurns));
    }

    /** The state after turns by hand that may overshoot and come back. */
    public AxisState afterTurns(Rig rig, HandTurns azimuthTurns, HandTurns altitudeTurns) {
        return Motion.turns(rig, azimuthTurns, altitudeTurns, senses, altitude())
                .applyTo(this);
    }

    /**
     * The state after the clamps are tightened, with the shift learned from earlier nights or the sigma given in the
     * rig.
     */
    public AxisState afterClamping(Rig rig) {
        return Motion.shift(site, rig.usualClampShift(), rig.clampingSigma(), senses)
                .applyTo(this);
    }

    /**
     * The net turns, clockwise positive, that bring the mean to {@code aim} with the learned gains, each screw finished
     * in the direction that the rig asks for.
     */
    public Turns turnsTo(AxisOffset aim, Rig rig) {
        AxisPointing target = AxisPointing.of(site, aim);
        Turns effective = gains().turnsBetween(axis(), target, rig);
        return new Turns(
                rig.azimuthScrew().neededFrom(senses.azimuth(), effective.azimuth()),
                rig.altitudeScrew().neededFrom(senses.altitude(), effective.altitude()));
    }

    /** Direction of the azimuth screw's last turn: +1 clockwise, −1 counter-clockwise, 0 not turned yet. */
    public double lastAzimuthSense() {
        return senses.azimuth();
    }

    /** Direction of the altitude screw's last turn: +1 clockwise, −1 counter-clockwise, 0 not turned yet. */
    public double lastAltitudeSense() {
        return senses.altitude();
    }

    public Site site() {
        return site;
    }

    /** Turns of both screws, clockwise positive. */
    public record Turns(double azimuth, double altitude) {}

    double mean(int index) {
        return mean[index];
    }

    double covariance(int row, int column) {
        return covariance[at(row, column)];
    }

    /** Index of a covariance in the row-major array. */
    static int at(int row, int column) {
        return SIZE * row + column;
    }

    /** A copy. */
    RealVector mean() {
        return MatrixUtils.createRealVector(mean);
    }

    /** A copy. */
    RealMatrix covariance() {
        RealMatrix matrix = new Array2DRowRealMatrix(SIZE, SIZE);
        for (int i = 0; i < SIZE; i++) {
            for (int j = 0; j < SIZE; j++) {
                matrix.setEntry(i, j, covariance(i, j));
            }
        }
        return matrix;
    }

    double[] copyOfMean() {
        return Arrays.copyOf(mean, SIZE);
    }

    double[] copyOfCovariance() {
        return Arrays.copyOf(covariance, SIZE * SIZE);
    }

    TurnSenses senses() {
        return senses;
    }

    Angle altitude() {
        return new Angle(mean[ALTITUDE]);
    }

    private double sigma(int index) {
        return Math.sqrt(covariance(index, index));
    }

    private AxisOffset nudged(int index, double byRad) {
        double azimuth = mean[AZIMUTH] + (index == AZIMUTH ? byRad : 0);
        double altitude = mean[ALTITUDE] + (index == ALTITUDE ? byRad : 0);
        return AxisPointing.of(new Angle(azimuth), new Angle(altitude)).offset(site);
    }

    private static void setVariance(double[] covariance, int index, double sigma) {
        covariance[at(index, index)] = sigma * sigma;
    }
}
