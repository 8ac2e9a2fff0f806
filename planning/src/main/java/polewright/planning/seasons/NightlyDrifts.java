package polewright.planning.seasons;

import java.time.Instant;
import java.util.List;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * Drifts from night to night as observations of the trend of the axis, with their joint covariance.
 *
 * @param gaps in time order
 */
record NightlyDrifts(List<NightGap.Drifted> gaps) {
    // A smaller stated uncertainty is not credible.
    private static final double LEAST_SIGMA_ARCMIN = 0.02;

    NightlyDrifts {
        gaps = List.copyOf(gaps);
    }

    /** One of the two directions on the sky. */
    enum Direction {
        EAST,
        UP;

        /** Arcminutes. */
        double of(AxisOffset offset) {
            return (this == EAST ? offset.east() : offset.up()).arcminutes();
        }

        /** Arcmin². */
        double variance(OffsetCovariance covariance) {
            return this == EAST ? covariance.eastEastArcmin2() : covariance.upUpArcmin2();
        }
    }

    int count() {
        return gaps.size();
    }

    Instant from() {
        return gaps.get(0).before().at();
    }

    Instant to() {
        return gaps.get(gaps.size() - 1).after().at();
    }

    NightlyDrifts without(List<NightGap.Drifted> some) {
        return new NightlyDrifts(
                gaps.stream().filter(gap -> !some.contains(gap)).toList());
    }

    /** Elapsed months in each gap; with {@code withYear}, also the changes of cosine and sine of the year. */
    double[][] design(boolean withYear) {
        return gaps.stream()
                .map(gap -> elapsed(gap.before().at(), gap.after().at(), withYear))
                .toArray(double[][]::new);
    }

    /** The same for any interval. */
    static double[] elapsed(Instant from, Instant to, boolean withYear) {
        double months = YearlyTime.months(to) - YearlyTime.months(from);
        double a = YearlyTime.yearRad(from);
        double b = YearlyTime.yearRad(to);
        return withYear
                ? new double[] {months, Math.cos(b) - Math.cos(a), Math.sin(b) - Math.sin(a)}
                : new double[] {months};
    }

    /** Arcminutes. */
    double[] observed(Direction direction) {
        return gaps.stream().mapToDouble(gap -> direction.of(gap.drift())).toArray();
    }

    /**
     * Covariance of the observations, arcmin². Two drifts that share a night on which the axis was not sighted again
     * after it was moved, or not moved at all, share that night's error with opposite signs; the ends at other nights
     * are assumed to be independent.
     *
     * @param scatterArcmin additional random movement in each gap
     */
    double[][] covariance(Direction direction, double scatterArcmin) {
        int n = gaps.size();
        double[][] covariance = new double[n][n];
        for (int i = 0; i < n; i++) {
            NightGap.Drifted gap = gaps.get(i);
            covariance[i][i] = variance(gap.before(), direction)
                    + variance(gap.after(), direction)
                    + scatterArcmin * scatterArcmin;
            boolean isSharing = i + 1 < n
                    && gap.to().id().equals(gaps.get(i + 1).from().id())
                    && !gap.to().isSightedAfterMove();
            if (isSharing) {
                double shared = -variance(gap.after(), direction);
                covariance[i][i + 1] = shared;
                covariance[i + 1][i] = shared;
            }
        }
        return covariance;
    }

    private static double variance(AxisAtTime then, Direction direction) {
        return direction.variance(then.covariance()) + LEAST_SIGMA_ARCMIN * LEAST_SIGMA_ARCMIN;
    }

    /** Longest interval without a night, days. */
    double longestGapDays() {
        return gaps.stream()
                .mapToDouble(gap -> gap.duration().toSeconds() / 86_400.0)
                .max()
                .orElse(0);
    }
}
