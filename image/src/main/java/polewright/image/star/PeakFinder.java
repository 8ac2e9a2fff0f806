package polewright.image.star;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import polewright.image.Frame;

/**
 * One pass over the frame, band by band: subtract the background, normalise the noise, filter, find peaks. No picture
 * other than the frame itself is ever held whole; each band keeps a ring buffer of rows.
 */
final class PeakFinder {
    private static final int BAND = 128;
    // One filtered value per this many pixels and rows is kept to measure the noise after filtering.
    private static final int SAMPLE = 16;
    private static final int MOST_IN_A_BAND = 20_000;
    private static final long LARGE = 1_500_000;
    private static final int ENOUGH_TO_LEARN = 40;
    // From this width on, a star covers more pixels than are needed to detect it.
    private static final double WIDE_SIGMA = 2.6;
    // Narrower stars lose up to 7 % of their signal to noise by binning, which matters only if stars are few.
    private static final double WIDE_SIGMA_OF_MANY = 1.2;

    private final BackgroundSubtractedRows skyless;
    private final boolean isLarge;
    private final boolean isSkew;

    PeakFinder(Frame frame, BackgroundMesh mesh, HotPixels hot) {
        this(
                new BackgroundSubtractedRows.Full(frame, mesh, hot),
                (long) frame.width() * frame.height() >= LARGE,
                mesh.isCutAtBlack());
    }

    private PeakFinder(BackgroundSubtractedRows skyless, boolean isLarge, boolean isSkew) {
        this.skyless = skyless;
        this.isLarge = isLarge;
        this.isSkew = isSkew;
    }

    /**
     * Peaks of stars of a known width. Wide stars in a large frame are found with 2 × 2 binning.
     *
     * @param many whether there are known to be so many bright stars that the faintest are not needed
     */
    Peaks findStars(double sigma, Optional<TrailFilter> trail, double threshold, boolean many) {
        double wide = many ? WIDE_SIGMA_OF_MANY : WIDE_SIGMA;
        if (isLarge && trail.isEmpty() && sigma >= wide && skyless instanceof BackgroundSubtractedRows.Full full) {
            // A square of two pixels adds a quarter of a pixel to the variance in each direction.
            PointFilter filter = new PointFilter(Math.sqrt(sigma * sigma + 0.25) / 2);
            return new PeakFinder(new BackgroundSubtractedRows.Binned(full), true, isSkew)
                    .find(filter, trail, threshold);
        }
        return find(new PointFilter(sigma), trail, threshold);
    }

    /**
     * The result of one pass.
     *
     * @param peaks highest first
     * @param noise standard deviation of the filtered background; one if the pixels' noise is white and well measured,
     *     more if it is correlated between neighbours
     */
    record Peaks(List<Peak> peaks, double noise) {
        /** The peaks that are not on known hot pixels. */
        Peaks without(HotPixels hot) {
            return new Peaks(
                    peaks.stream().filter(p -> !hot.isNear(p.x(), p.y())).toList(), noise);
        }
    }

    private int bands() {
        return (skyless.height() + BAND - 1) / BAND;
    }

    /** Peaks above a threshold all over the frame. */
    Peaks find(PointFilter filter, Optional<TrailFilter> trail, double threshold) {
        return find(filter, trail, threshold, b -> true);
    }

    /** Peaks for calibration: of a large frame only every fourth band, if that has enough. */
    Peaks scout(PointFilter filter, double threshold) {
        if (isLarge()) {
            Peaks some = find(filter, Optional.empty(), threshold, b -> b % 4 == 1);
            if (some.peaks().size() >= ENOUGH_TO_LEARN) {
                return some;
            }
        }
        return find(filter, Optional.empty(), threshold);
    }

    /** Whether a part of the frame is enough for calibration. */
    boolean isLarge() {
        return isLarge;
    }

    // The result does not depend on which processor takes which band.
    private Peaks find(PointFilter filter, Optional<TrailFilter> trail, double threshold, IntPredicate bands) {
        List<Band> passed = IntStream.range(0, bands())
                .filter(bands)
                .parallel()
                .mapToObj(b -> new Band(filter, trail, threshold, b))
                .toList();
        List<Peak> peaks = new ArrayList<>();
        int samples = passed.stream().mapToInt(b -> b.samples).sum();
        float[] sampled = new float[samples];
        int n = 0;
        for (Band band : passed) {
            peaks.addAll(band.peaks);
            System.arraycopy(band.sampled, 0, sampled, n, band.samples);
            n += band.samples;
        }
        peaks.sort((a, b) -> Float.compare(b.height(), a.height()));
        return new Peaks(peaks, spread(sampled, n, isSkew));
    }

    /**
     * Standard deviation of the values, from those below the median, which stars affect least: the 10th and the 30th
     * percentiles are 1.2816 and 0.5244 sigma below it. If the lower half of the noise was clipped, both halves are
     * used, as those of a split normal distribution.
     */
    private static double spread(float[] values, int n, boolean skew) {
        if (n < 500) {
            return 1;
        }
        float low = Quantile.select(values, n, (int) (0.1 * n));
        float less = Quantile.select(values, n, (int) (0.3 * n));
        double below = (less - low) / (1.2816 - 0.5244);
        if (!skew) {
            return below;
        }
        float more = Quantile.select(values, n, (int) (0.98 * n));
        double above = Math.max(below, (more - Quantile.select(values, n, n / 2)) / 2.054);
        return Math.sqrt((1 - 2 / Math.PI) * (above - below) * (above - below) + above * below);
    }

    private final class Band {
        private final List<Peak> peaks;
        private final float[] sampled;
        private final int samples;

        Band(PointFilter filter, Optional<TrailFilter> trail, double threshold, int band) {
            int width = skyless.width();
            int top = band * BAND;
            int bottom = Math.min(skyless.height(), top + BAND);
            FilteredRows rows = new FilteredRows(skyless, filter, trail, top - 1, bottom);
            List<Peak> found = new ArrayList<>();
            sampled = new float[(BAND / SAMPLE + 1) * (width / SAMPLE + 1)];
            int kept = 0;
            for (int y = top - 1; y <= bottom; y++) {
                rows.make(y);
                if (y > top) {
                    collect(rows, y - 1, (float) threshold, found);
                }
                if (y >= top && y < bottom && (y - top) % SAMPLE == SAMPLE / 2) {
                    float[] row = rows.row(y);
                    for (int x = SAMPLE / 2; x < width; x += SAMPLE) {
                        // Exactly zero marks a position without pixels or without noise.
                        if (row[x] != 0) {
                            sampled[kept++] = row[x];
                        }
                    }
                }
            }
            if (found.size() > MOST_IN_A_BAND) {
                found.sort((a, b) -> Float.compare(b.height(), a.height()));
                found.subList(MOST_IN_A_BAND, found.size()).clear();
            }
            peaks = found;
            samples = kept;
        }

        private void collect(FilteredRows rows, int y, float threshold, List<Peak> found) {
            float[] above = rows.row(y - 1);
            float[] here = rows.row(y);
            float[] below = rows.row(y + 1);
            for (int x = 1; x < here.length - 1; x++) {
                float v = here[x];
                if (v > threshold
                        && v > here[x - 1]
                        && v >= here[x + 1]
                        && v > above[x]
                        && v >= below[x]
                        && v > above[x - 1]
                        && v > above[x + 1]
                        && v >= below[x - 1]
                        && v >= below[x + 1]) {
                    found.add(new Peak(onFrame(x, here[x - 1], v, here[x + 1]), onFrame(y, above[x], v, below[x]), v));
                }
            }
        }

        /** The pixel of the frame at a maximum of the filtered rows, by the parabola through it and its neighbours. */
        private int onFrame(int at, float before, float here, float after) {
            int binning = skyless.binning();
            if (binning == 1) {
                return at;
            }
            double bend = 2.0 * here - before - after;
            double off = bend > 0 ? (after - before) / (2 * bend) : 0;
            return (int) Math.rint(binning * (at + 0.5 + Math.max(-0.5, Math.min(0.5, off))) - 0.5);
        }
    }
}
