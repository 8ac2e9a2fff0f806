package polewright.bench.independent;

import java.time.Duration;
import java.util.Comparator;
import java.util.Optional;
import java.util.random.RandomGenerator;
import polewright.bench.independent.truth.Directions;
import polewright.bench.independent.truth.SeenSky;
import polewright.bench.independent.truth.Star;
import polewright.bench.independent.truth.Turns;
import polewright.mount.rig.Rig;

/**
 * Tonight's mistake: which, on which occasion, and how large.
 *
 * @param mistake empty on a correct night
 * @param occasion of its kind, from 1: the second drift, the first turn
 * @param amount hours or days that the clock is ahead; turns of the azimuth screw that go unlogged
 * @param altitudeAmount turns of the altitude screw that go unlogged
 */
record Slip(Optional<Mistake> mistake, int occasion, double amount, double altitudeAmount) {
    static final Slip NONE = new Slip(Optional.empty(), 0, 0, 0);

    private static final double NEIGHBOUR_DEG = 25;
    private static final int NEIGHBOURS = 3;
    private static final double LEAST_APART_DEG = 0.5;
    private static final double FAINTER_BY = 1;
    private static final double FAINTEST_LOOK_ALIKE = 3;
    private static final double OFF_MERIDIAN_DEG = 20;
    private static final double NEIGHBOURHOOD_DEG = 15;
    private static final double LOWEST_DEG = 15;

    /** This mistake on its first or second occasion. */
    static Slip of(Mistake mistake, RandomGenerator random) {
        int occasion = 1 + random.nextInt(2);
        int sign = random.nextBoolean() ? 1 : -1;
        return switch (mistake) {
            case CLOCK_HOURS -> new Slip(Optional.of(mistake), 0, sign * (1 + random.nextInt(3)), 0);
            case DATE -> new Slip(Optional.of(mistake), 0, sign, 0);
            case UNLOGGED_TURN ->
                new Slip(
                        Optional.of(mistake),
                        // Before a sighting that is not the first, when there is an axis to lose.
                        2 + random.nextInt(3),
                        random.nextBoolean() ? sign * (0.5 + 2.5 * random.nextDouble()) : 0,
                        0.5 + 2.5 * random.nextDouble());
            case COMPASS_END -> new Slip(Optional.of(mistake), 1, 0, 0);
            default -> new Slip(Optional.of(mistake), occasion, 0, 0);
        };
    }

    private boolean is(Mistake some) {
        return mistake.filter(some::equals).isPresent();
    }

    boolean isOfTheWholeNight() {
        return mistake.filter(Mistake::isOfTheWholeNight).isPresent();
    }

    /**
     * The details of the night as stated.
     *
     * @param wronglyStated the rig with its finder stated as erect
     */
    Told stated(Told truly, Rig wronglyStated) {
        double latitude = truly.latitudeDeg();
        double longitude = truly.longitudeDeg();
        return new Told(
                is(Mistake.LATITUDE_SIGN) ? -latitude : is(Mistake.SWAPPED) ? longitude : latitude,
                is(Mistake.LONGITUDE_SIGN) ? -longitude : is(Mistake.SWAPPED) ? latitude : longitude,
                truly.heightMetres(),
                is(Mistake.VIEW) ? wronglyStated : truly.rig(),
                is(Mistake.CLOCK_HOURS)
                        ? Duration.ofMinutes(Math.round(60 * amount))
                        : is(Mistake.DATE) ? Duration.ofDays(Math.round(amount)) : Duration.ZERO,
                is(Mistake.DECLINATION_SIGN));
    }

    boolean readsTheOtherEnd(int compass) {
        return is(Mistake.COMPASS_END) && compass == occasion;
    }

    boolean exchangesNorthAndSouth(int drift) {
        return is(Mistake.DRIFT_SIGN) && drift == occasion;
    }

    /** The star that is watched instead of the advised one, if there is one that can be mistaken for it. */
    Optional<Star> watchedFor(Star asked, SeenSky sky, int drift) {
        if (drift < occasion) {
            return Optional.empty();
        }
        return is(Mistake.WRONG_STAR)
                ? neighbour(asked, sky)
                : is(Mistake.OTHER_SIDE) ? beyondTheMeridian(asked, sky) : Optional.empty();
    }

    /** Of the three nearest of equal brightness the farthest: a nearer one would drift much like the star itself. */
    private static Optional<Star> neighbour(Star asked, SeenSky sky) {
        double[] where = sky.direction(asked);
        return Catalogue.stars().stream()
                .filter(star -> star.magnitude() <= asked.magnitude() + FAINTER_BY)
                .filter(star -> isUp(star, sky))
                .filter(star -> apartDeg(star, where, sky) > LEAST_APART_DEG)
                .filter(star -> apartDeg(star, where, sky) < NEIGHBOUR_DEG)
                .sorted(Comparator.comparingDouble(star -> apartDeg(star, where, sky)))
                .limit(NEIGHBOURS)
                .reduce((nearer, farther) -> farther);
    }

    private static Optional<Star> beyondTheMeridian(Star asked, SeenSky sky) {
        double[] where = sky.direction(asked);
        double[] mirrored = {-where[0], where[1], where[2]};
        if (Math.abs(Math.toDegrees(sky.hourAngle(where))) < OFF_MERIDIAN_DEG) {
            return Optional.empty();
        }
        return Catalogue.stars().stream()
                .filter(star -> star.magnitude() <= FAINTEST_LOOK_ALIKE)
                .filter(star -> isUp(star, sky))
                .min(Comparator.comparingDouble(star -> apartDeg(star, mirrored, sky)))
                .filter(star -> apartDeg(star, mirrored, sky) < NEIGHBOURHOOD_DEG);
    }

    private static boolean isUp(Star star, SeenSky sky) {
        return Math.toDegrees(Directions.altitude(sky.direction(star))) > LOWEST_DEG;
    }

    private static double apartDeg(Star star, double[] where, SeenSky sky) {
        return Math.toDegrees(Directions.angle(sky.direction(star), where));
    }

    /** The turns really made. */
    Turns made(Turns ordered, int turn) {
        if (turn != occasion) {
            return ordered;
        }
        return is(Mistake.REVERSED_TURN) ? ordered.reversed() : is(Mistake.OTHER_SCREW) ? ordered.exchanged() : ordered;
    }

    /** Turns before a sighting that are not logged. */
    Turns unlogged(int sighting) {
        return is(Mistake.UNLOGGED_TURN) && sighting == occasion
                ? Turns.straight(amount, amount == 0 ? altitudeAmount : 0)
                : Turns.NONE;
    }
}
