package polewright.bench.frames;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.match.MatchHint;
import polewright.image.match.ScaleRange;
import polewright.image.match.SkyPatch;
import polewright.simulation.camera.SkyTruth;
import polewright.sky.angle.Angle;

/** What may be known about a frame before it is matched. */
enum Knowledge {
    /** Within 10° of a place, and the scale to 20 %. */
    PLACE_AND_SCALE("near a place, scale to 20 %"),
    /** Anywhere, and the scale to 20 %. */
    SCALE("whole sky, scale to 20 %"),
    NOTHING("whole sky, nothing known");

    private static final Angle WITHIN = Angle.ofDegrees(10);
    private static final double SCALE_SHARE = 0.2;
    private static final double J2000_SECONDS = 946_728_000;
    private static final double SECONDS_IN_A_JULIAN_YEAR = 365.25 * 86_400;

    private final String words;

    Knowledge(String words) {
        this.words = words;
    }

    /** Each kind in turn. */
    static Knowledge bySeed(long seed) {
        List<Knowledge> kinds = List.of(values());
        return kinds.get((int) Math.floorMod(seed, (long) kinds.size()));
    }

    /** A hint with the largest permitted error. */
    MatchHint hint(SkyTruth truth, RandomGenerator random) {
        return hint(Directions.of(truth.centre()), truth.scalePerPixel(), truth.middle(), random);
    }

    /** The same for a frame that is not of this place. */
    MatchHint hint(Vector3D centre, Angle scalePerPixel, Instant at, RandomGenerator random) {
        MatchHint none = MatchHint.none(julianYear(at));
        if (this == NOTHING) {
            return none;
        }
        double assumed = 1 / (1 + SCALE_SHARE * 0.95 * (2 * random.nextDouble() - 1));
        MatchHint scaled = none.withScale(ScaleRange.about(scalePerPixel.times(assumed), SCALE_SHARE));
        if (this == SCALE) {
            return scaled;
        }
        Vector3D place = Directions.within(centre, WITHIN.times(0.99), random);
        return new MatchHint(
                Optional.of(new SkyPatch(new Angle(place.getAlpha()), new Angle(place.getDelta()), WITHIN)),
                scaled.scale(),
                scaled.mirrored(),
                scaled.julianYear());
    }

    static double julianYear(Instant at) {
        return 2000 + (at.getEpochSecond() - J2000_SECONDS) / SECONDS_IN_A_JULIAN_YEAR;
    }

    @Override
    public String toString() {
        return words;
    }
}
