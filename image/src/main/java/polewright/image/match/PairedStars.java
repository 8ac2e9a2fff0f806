package polewright.image.match;

import java.util.Arrays;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The pairs of detections and atlas stars under one plate; each star at most once.
 *
 * <p>Results are columns: {@code rankOf[i]} is the star of detection i, −1 if there is none.
 */
final class PairedStars {
    private final Detections detections;
    private final MappedStars sky;
    private final int[] rankOf;
    private final int size;

    private PairedStars(Detections detections, MappedStars sky, int[] rankOf) {
        this.detections = detections;
        this.sky = sky;
        this.rankOf = rankOf;
        this.size = (int) Arrays.stream(rankOf).filter(rank -> rank >= 0).count();
    }

    /** The largest distance of a detection from its star, pixels. */
    @FunctionalInterface
    interface Tolerance {
        double pixels(double x, double y);
    }

    /**
     * Pairs the first detections with the brightest stars.
     *
     * @param tried number of detections, the brightest
     * @param below only stars of a smaller rank than this
     * @param tolerance by position; positions where it is 0 are skipped
     */
    static PairedStars of(
            Plate plate, Detections detections, MappedStars sky, int tried, int below, Tolerance tolerance) {
        int[] rankOf = new int[tried];
        double[] off2 = new double[tried];
        Arrays.fill(rankOf, -1);
        Nearest nearest = new Nearest(sky);
        for (int i = 0; i < tried; i++) {
            double x = detections.x(i);
            double y = detections.y(i);
            double limit = tolerance.pixels(x, y);
            if (limit <= 0) {
                continue;
            }
            Vector3D direction = plate.toSky(x, y);
            // Away from the centre a pixel covers less sky, but by no more than a factor of a few.
            int rank = nearest.find(direction, limit / plate.pixelsPerRadian(), below);
            if (rank >= 0) {
                double offRad = nearest.offRad();
                double cos = direction.dotProduct(plate.centre());
                rankOf[i] = rank;
                off2[i] = square(offRad * plate.pixelsPerRadian() / cos);
            }
        }
        keepTheNearer(rankOf, off2);
        return new PairedStars(detections, sky, rankOf);
    }

    private static double square(double value) {
        return value * value;
    }

    private static void keepTheNearer(int[] rankOf, double[] off2) {
        long[] byRank = new long[rankOf.length];
        int paired = 0;
        for (int i = 0; i < rankOf.length; i++) {
            if (rankOf[i] >= 0) {
                byRank[paired++] = (long) rankOf[i] << 32 | i;
            }
        }
        Arrays.sort(byRank, 0, paired);
        int best = 0;
        for (int at = 1; at < paired; at++) {
            int here = (int) byRank[at];
            int kept = (int) byRank[best];
            if (rankOf[here] != rankOf[kept]) {
                best = at;
            } else if (off2[here] < off2[kept]) {
                rankOf[kept] = -1;
                best = at;
            } else {
                rankOf[here] = -1;
            }
        }
    }

    /** Number of detections with a star. */
    int size() {
        return size;
    }

    /** Number of detections tried. */
    int tried() {
        return rankOf.length;
    }

    int rankOf(int detection) {
        return rankOf[detection];
    }

    /** Squared residual of a paired detection, pixels². */
    double residualPixels2(Plate plate, int detection) {
        Vector3D direction = plate.toSky(detections.x(detection), detections.y(detection));
        double off = direction.distance(sky.direction(rankOf[detection])) * plate.pixelsPerRadian();
        // Away from the centre a pixel covers less sky than there: by cos and, along the radius, by another cos.
        return square(off / direction.dotProduct(plate.centre()));
    }

    /** Magnitude of a paired detection's star. */
    double magnitude(int detection) {
        return sky.magnitude(rankOf[detection]);
    }

    /** The detections with a star, brightest first. */
    int[] paired() {
        int[] paired = new int[size];
        int at = 0;
        for (int i = 0; i < rankOf.length; i++) {
            if (rankOf[i] >= 0) {
                paired[at++] = i;
            }
        }
        return paired;
    }

    /** For a fit. */
    PlateFit.Pairs forFit(AtlasSigma atlas) {
        int[] chosen = paired();
        return new PlateFit.Pairs(
                chosen.length,
                i -> detections.x(chosen[i]),
                i -> detections.y(chosen[i]),
                i -> Math.hypot(detections.sigma(chosen[i]), atlas.pixels(sky.number(rankOf[chosen[i]]))),
                i -> sky.direction(rankOf[chosen[i]]));
    }

    /** Accuracy of the atlas positions. */
    @FunctionalInterface
    interface AtlasSigma {
        /** 1 sigma in pixels of the star with this atlas number. */
        double pixels(int number);
    }

    /** Finds the star nearest to a direction; one search at a time. */
    private static final class Nearest implements SkyGrid.Visitor {
        private final MappedStars sky;
        private final double[] chord2 = new double[1];
        private final int[] best = new int[1];

        Nearest(MappedStars sky) {
            this.sky = sky;
        }

        int find(Vector3D direction, double radiusRad, int below) {
            chord2[0] = Double.MAX_VALUE;
            best[0] = -1;
            sky.grid().near(direction.getX(), direction.getY(), direction.getZ(), radiusRad, below, this);
            return best[0];
        }

        double offRad() {
            return 2 * Math.asin(Math.min(1, Math.sqrt(chord2[0]) / 2));
        }

        @Override
        public void star(int rank, double apart2) {
            if (apart2 < chord2[0]) {
                chord2[0] = apart2;
                best[0] = rank;
            }
        }
    }
}
