package polewright.image.star;

import java.util.Arrays;
import java.util.Optional;

/** Filtered rows of one band, computed from the top down with ring buffers of the surrounding rows. */
final class FilteredRows {
    private static final int KEPT = 3;

    private final int width;
    private final int height;
    private final BackgroundSubtractedRows.Reader skyless;
    private final PointFilter filter;
    private final Optional<TrailFilter> trail;
    private final TrailFilter.Plan plan;
    private final int first;
    private final int trailReach;
    private final float[] padded;
    private final float[][] shifted;
    private final float[][] along;
    private final float[][] points;
    private final float[][] filtered;

    /**
     * @param first row to compute
     * @param last row to compute
     */
    FilteredRows(
            BackgroundSubtractedRows skyless, PointFilter filter, Optional<TrailFilter> trail, int first, int last) {
        width = skyless.width();
        height = skyless.height();
        this.skyless = skyless.reader();
        this.filter = filter;
        this.trail = trail;
        this.first = first;
        trailReach = trail.map(TrailFilter::reach).orElse(0);
        plan = trail.map(t -> t.plan(width, (first + last) / 2.0)).orElse(TrailFilter.Plan.NONE);
        padded = new float[width + 2 * filter.reach()];
        shifted = new float[4][width];
        along = new float[2 * filter.reach() + 1][width];
        filtered = new float[KEPT][width];
        points = trail.isPresent() ? new float[2 * trailReach + 1][width] : filtered;
    }

    /** One of the last three rows computed. */
    float[] row(int y) {
        return filtered[Math.floorMod(y, KEPT)];
    }

    /** Computes row y, the one below the last. */
    void make(int y) {
        for (int r = y == first ? y - trailReach : y + trailReach; r <= y + trailReach; r++) {
            makePoints(r);
        }
        if (trail.isPresent()) {
            plan.sum(points, y, row(y), width);
        }
    }

    private void makePoints(int y) {
        int reach = filter.reach();
        for (int r = y == first - trailReach ? y - reach : y + reach; r <= y + reach; r++) {
            float[] row = along[Math.floorMod(r, along.length)];
            if (r < 0 || r >= height) {
                Arrays.fill(row, 0);
            } else {
                filterAlong(r, row);
            }
        }
        filter.across(along, y, points[Math.floorMod(y, points.length)], width);
    }

    /** Background-subtracted pixels in units of noise, filtered along the row. */
    private void filterAlong(int y, float[] out) {
        int reach = filter.reach();
        skyless.read(y, padded, reach);
        filter.along(padded, out, width, shifted);
        // A missing pixel affects all positions within its reach, so one check is enough.
        boolean missing = !isNumber(out[width - 1]);
        for (int x = 0; x < width && !missing; x += reach) {
            missing = !isNumber(out[x]);
        }
        if (missing) {
            for (int x = reach; x < width + reach; x++) {
                padded[x] = isNumber(padded[x]) ? padded[x] : 0;
            }
            filter.along(padded, out, width, shifted);
        }
    }

    private static boolean isNumber(float v) {
        return Math.abs(v) <= Float.MAX_VALUE;
    }
}
