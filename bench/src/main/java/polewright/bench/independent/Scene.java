package polewright.bench.independent;

import java.time.Instant;
import java.util.function.Predicate;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import polewright.bench.independent.truth.Air;
import polewright.bench.independent.truth.Offset;
import polewright.bench.independent.truth.Place;
import polewright.bench.independent.truth.SeenSky;

/**
 * Where and when a night is, all from one seed: dark from its first minute and for four hours, in 2026.
 *
 * @param random for whatever is drawn after the scene
 */
record Scene(Place place, Air air, Instant from, Offset offset, RandomGenerator random) {
    private static final Instant FIRST_DAY = Instant.parse("2026-01-01T00:00:00Z");
    // Even, so that the hemisphere stays the same.
    private static final long OTHER_SEEDS = 1_000_000_000L;
    private static final double DARK = Math.toRadians(-15);
    private static final int DARK_SECONDS = 4 * 3600;
    private static final double SOUTHERNMOST_DEG = 65;
    private static final double HIGHEST_METRES = 2000;

    /**
     * North of the equator for even seeds, south of it for odd ones.
     *
     * @param leastLatitudeDeg of either hemisphere; up to 65°
     * @param largestOffsetDeg east and up are uniform up to this, with either sign
     */
    static Scene drawn(long seed, double leastLatitudeDeg, double largestOffsetDeg) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(0x5EED_0000_0000L + seed);
        double latitude = leastLatitudeDeg + (SOUTHERNMOST_DEG - leastLatitudeDeg) * random.nextDouble();
        double longitudeDeg = -180 + 360 * random.nextDouble();
        Place place = Place.ofDegrees(
                seed % 2 == 0 ? latitude : -latitude, longitudeDeg, HIGHEST_METRES * random.nextDouble());
        Air air = Air.drawn(place.heightMetres(), random);
        Instant from;
        do {
            double hours =
                    24 * Math.floor(365 * random.nextDouble()) + 19 + 4 * random.nextDouble() - longitudeDeg / 15;
            from = FIRST_DAY.plusSeconds(Math.round(hours * 3600));
        } while (!isDark(place, air, from) || !isDark(place, air, from.plusSeconds(DARK_SECONDS)));
        double most = largestOffsetDeg * 60;
        Offset offset = new Offset(most * (2 * random.nextDouble() - 1), most * (2 * random.nextDouble() - 1));
        return new Scene(place, air, from, offset, random);
    }

    /** The first such scene, from a seed on, whose place is suitable. */
    static Scene drawn(long seed, double leastLatitudeDeg, double largestOffsetDeg, Predicate<Place> willDo) {
        Scene scene = drawn(seed, leastLatitudeDeg, largestOffsetDeg);
        for (int i = 1; !willDo.test(scene.place()); i++) {
            scene = drawn(seed + i * OTHER_SEEDS, leastLatitudeDeg, largestOffsetDeg);
        }
        return scene;
    }

    private static boolean isDark(Place place, Air air, Instant at) {
        return SeenSky.of(place, at, air).sunAltitude() < DARK;
    }
}
