package polewright.bench.independent.truth;

import java.util.random.RandomGenerator;

/**
 * A wedge in its true state: a tilted base, turned about its own vertical by one screw, with a hinge that another
 * raises.
 *
 * @param place where it is
 * @param leanEast tilt of the base's vertical to the east
 * @param leanNorth tilt of the base's vertical to the north
 * @param azimuth of the axis on the base, without the effect of the azimuth screw
 * @param altitude of the axis over the base, without the effect of the altitude screw
 * @param azimuthScrew swings the wedge
 * @param altitudeScrew raises the axis
 */
public record Wedge(
        Place place,
        double leanEast,
        double leanNorth,
        double azimuth,
        double altitude,
        Screw azimuthScrew,
        Screw altitudeScrew) {
    /**
     * How far tightening or loosening the clamps shifts the axis, 1 sigma in each direction on the sky (common
     * practice: 1′ to 3′).
     */
    private static final double CLAMP_SIGMA = Math.toRadians(2 / 60.0);
    /** Error of moving a mount by hand. */
    private static final double BY_HAND_SIGMA = Math.toRadians(1);

    /**
     * A wedge with this axis offset.
     *
     * @param lean 1 sigma in each direction
     * @param azimuthPerTurn tangent of the effect of a clockwise turn, to the right positive
     * @param altitudePerTurn the same, up positive
     * @param play turns that both screws lose when their sense is reversed
     */
    public static Wedge set(
            Place place,
            Offset offset,
            double lean,
            double azimuthPerTurn,
            double altitudePerTurn,
            double play,
            RandomGenerator random) {
        double east = lean * random.nextGaussian();
        double north = lean * random.nextGaussian();
        double[] onBase = Directions.turned(
                Directions.turned(place.axis(offset), new double[] {0, 1, 0}, -east), new double[] {1, 0, 0}, north);
        return new Wedge(
                place,
                east,
                north,
                Directions.azimuth(onBase),
                Directions.altitude(onBase),
                Screw.drawn(azimuthPerTurn, play, random),
                Screw.drawn(altitudePerTurn, play, random));
    }

    /** Where the upper end of the axis points. */
    public double[] axis() {
        double[] onBase = Directions.of(azimuth + azimuthScrew.angle(), altitude + altitudeScrew.angle());
        return Directions.turned(
                Directions.turned(onBase, new double[] {1, 0, 0}, -leanNorth), new double[] {0, 1, 0}, leanEast);
    }

    public Offset offset() {
        return place.offset(axis());
    }

    /** Both screws turned by hand. */
    public Wedge turned(Turns turns, RandomGenerator random) {
        return new Wedge(
                place,
                leanEast,
                leanNorth,
                azimuth,
                altitude,
                azimuthScrew.turned(turns.azimuth(), turns.azimuthBack(), random),
                altitudeScrew.turned(turns.altitude(), turns.altitudeBack(), random));
    }

    /** Clamps tightened or loosened. */
    public Wedge clamped(RandomGenerator random) {
        return shifted(CLAMP_SIGMA * random.nextGaussian() / Math.cos(altitude), CLAMP_SIGMA * random.nextGaussian());
    }

    /** The whole mount moved by hand, roughly by these angles: to the right and up positive, radians. */
    public Wedge moved(double right, double up, RandomGenerator random) {
        return shifted(right + BY_HAND_SIGMA * random.nextGaussian(), up + BY_HAND_SIGMA * random.nextGaussian());
    }

    private Wedge shifted(double right, double up) {
        return new Wedge(place, leanEast, leanNorth, azimuth + right, altitude + up, azimuthScrew, altitudeScrew);
    }
}
