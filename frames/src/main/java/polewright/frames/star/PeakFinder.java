package polewright.frames.star;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import polewright.frames.Frame;

/**
 * One pass over the frame, band by band: sky off, noise to one, filter, peaks. No picture but the frame itself is ever
 * held whole; each band keeps a ring of rows.
 */
final class PeakFinder {
    private static final int BAND = 128;
    // Every so many pixels and rows one filtered value is kept, to see how much noise passes the filter.
    private static final int SAMPLE = 16;
    private static final int MOST_IN_A_BAND = 20_000;

    private final Frame frame;
    private final SkyMesh mesh;

    PeakFinder(Frame frame, SkyMesh mesh) {
        this.frame = frame;
        this.mesh = mesh;
    }

    /**
     * What one pass found.
     *
     * @param peaks highest first
     * @param noise standard deviation of the filtered sky; one where the pixels' noise is white and well measured, more
     *     where neighbours share it
     */
    record Peaks(List<Peak> peaks, double noise) {}

    int bands() {
        return (frame.height() + BAND - 1) / BAND;
    }

    /** Peaks above a threshold in some of the bands, the same whichever processor takes which. */
    Peaks find(PointFilter filter, double threshold, IntPredicate bands) {
        List<Band> passed = IntStream.range(0, bands())
                .filter(bands)
                .parallel()
                .mapToObj(b -> new Band(filter, threshold, b))
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
        return new Peaks(peaks, spread(sampled, n, mesh.isCutAtBlack()));
    }

    /**
     * Standard deviation of the values, from those well below the middle, which stars raise least: the 2nd and the 16th of
     * a hundred are 2.054 and 0.994 sigma below. Where the lower half of the noise has been cut off, the upper tells more.
     */
    private static double spread(float[] values, int n, boolean skew) {
        if (n < 500) {
            return 1;
        }
        float low = Quantile.select(values, n, (int) (0.02 * n));
        float less = Quantile.select(values, n, (int) (0.16 * n));
        double below = (less - low) / (2.054 - 0.994);
        if (!skew) {
            return below;
        }
        float more = Quantile.select(values, n, (int) (0.84 * n));
        return Math.max(below, (more - Quantile.select(values, n, n / 2)) / 0.994);
    }

    private final class Band {
        private final List<Peak> peaks;
        private final float[] sampled;
        private final int samples;

        Band(PointFilter filter, double threshold, int band) {
            int width = frame.width();
            int top = band * BAND;
            int bottom = Math.min(frame.height(), top + BAND);
            int reach = filter.reach();
            float[] level = new float[width];
            float[] perNoise = new float[width];
            float[] padded = new float[width + 2 * reach];
            float[][] ring = new float[2 * reach + 1][width];
            float[][] filtered = new float[3][width];
            List<Peak> found = new ArrayList<>();
            sampled = new float[(BAND / SAMPLE + 1) * (width / SAMPLE + 1)];
            int kept = 0;
            int next = top - 1 - reach;
            for (int y = top - 1; y <= bottom; y++) {
                for (; next <= y + reach; next++) {
                    float[] row = ring[Math.floorMod(next, ring.length)];
                    if (next < 0 || next >= frame.height()) {
                        Arrays.fill(row, 0);
                    } else {
                        overNoise(next, level, perNoise, padded, reach);
                        filter.along(padded, row, width);
                    }
                }
                filter.across(ring, y, filtered[Math.floorMod(y, 3)], width);
                if (y > top) {
                    collect(filtered, y - 1, (float) threshold, found);
                }
                if (y >= top && y < bottom && (y - top) % SAMPLE == SAMPLE / 2) {
                    float[] row = filtered[Math.floorMod(y, 3)];
                    for (int x = SAMPLE / 2; x < width; x += SAMPLE) {
                        // Exactly nought is a place without pixels or without noise.
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

        private void overNoise(int y, float[] level, float[] perNoise, float[] out, int reach) {
            int width = frame.width();
            float[] pixels = frame.pixels();
            mesh.row(y, level, perNoise);
            int start = y * width;
            for (int x = 0; x < width; x++) {
                out[x + reach] = (pixels[start + x] - level[x]) * perNoise[x];
            }
            for (int x = reach; x < width + reach; x++) {
                float v = out[x];
                // Nought for a pixel that is missing, or so full that it would drown all else.
                out[x] = Math.abs(v) <= Float.MAX_VALUE ? v : 0;
            }
        }

        private void collect(float[][] filtered, int y, float threshold, List<Peak> found) {
            float[] above = filtered[Math.floorMod(y - 1, 3)];
            float[] here = filtered[Math.floorMod(y, 3)];
            float[] below = filtered[Math.floorMod(y + 1, 3)];
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
                    found.add(new Peak(x, y, v));
                }
            }
        }
    }
}
