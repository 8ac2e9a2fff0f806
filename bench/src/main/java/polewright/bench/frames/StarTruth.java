package polewright.bench.frames;

import java.util.List;
import org.jspecify.annotations.Nullable;
import polewright.image.star.FoundStar;
import polewright.image.star.StarList;
import polewright.simulation.camera.Exposure;
import polewright.simulation.camera.SkyTruth;
import polewright.simulation.camera.TrueStar;

/** Compares the true stars of a frame with those found in it. */
final class StarTruth {
    // Fainter ones are found by chance, and are everywhere.
    private static final double LEAST_SIGNAL_TO_NOISE = 3;

    private final Pixels pixels;
    private final List<TrueStar> stars;

    private StarTruth(Pixels pixels, List<TrueStar> stars) {
        this.pixels = pixels;
        this.stars = stars;
    }

    static StarTruth of(Exposure exposure, SkyTruth truth) {
        return new StarTruth(Pixels.of(exposure), truth.stars());
    }

    /** How many stars of the atlas exceed this ratio. */
    int standingOut(double signalToNoise) {
        return (int) stars.stream()
                .filter(star -> star.number() != TrueStar.OF_NO_ATLAS && pixels.signalToNoise(star) >= signalToNoise)
                .count();
    }

    /** Stars, of the atlas or not, that exceed this ratio. */
    List<TrueStar> all(double signalToNoise) {
        return stars.stream()
                .filter(star -> pixels.signalToNoise(star) >= signalToNoise)
                .toList();
    }

    /** Of the brightest stars found, how many are in the atlas, are other stars, and are no stars. */
    Kinds kinds(StarList found, int brightest) {
        int ofAtlas = 0;
        int others = 0;
        int none = 0;
        for (FoundStar star : found.stars().subList(0, Math.min(brightest, found.size()))) {
            TrueStar nearest = nearest(star);
            if (nearest == null) {
                none++;
            } else if (nearest.number() == TrueStar.OF_NO_ATLAS) {
                others++;
            } else {
                ofAtlas++;
            }
        }
        return new Kinds(ofAtlas, others, none);
    }

    /** The true nature of some detected stars. */
    record Kinds(int ofAtlas, int others, int none) {
        @Override
        public String toString() {
            return ofAtlas + " of the atlas, " + others + " other stars, " + none + " no stars";
        }
    }

    /** The brightest star that it may be. */
    private @Nullable TrueStar nearest(FoundStar found) {
        TrueStar best = null;
        for (TrueStar star : all(LEAST_SIGNAL_TO_NOISE)) {
            double reach = Math.max(2, pixels.fwhmPixels()) + star.trailPixels() / 4;
            if (Math.hypot(star.x() - found.x(), star.y() - found.y()) < reach
                    && (best == null || star.electrons() > best.electrons())) {
                best = star;
            }
        }
        return best;
    }

    /** Magnitude of a star at the zenith with this signal-to-noise ratio. */
    static double faintestMagnitude(Exposure exposure, Pixels pixels, double trailPixels, double signalToNoise) {
        double electrons = 1;
        while (pixels.signalToNoise(new TrueStar(0, 0, 0, 0, -trailPixels / 2, 0, trailPixels / 2, 0, electrons))
                < signalToNoise) {
            electrons *= 1.02;
        }
        double perSecond = electrons / (exposure.length().toNanos() / 1e9);
        return 2.5 * Math.log10(exposure.camera().electronsPerSecond(0) / perSecond)
                - exposure.sky().extinctionPerAirmass();
    }
}
