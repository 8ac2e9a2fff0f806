package polewright.planning.seasons;

import java.time.Instant;
import java.util.List;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * Drifts from night to night as observations of how the axis goes: what they show, and how unsure they are together.
 *
 * @param gaps in the order of time
 */
record NightlyDrifts(List<NightGap.Drifted> gaps) {
    // What is said to be known better than this is only said so.
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
        return gaps.get(0).left().at();
    }

    Instant to() {
        return gaps.get(gaps.size() - 1).found().at();
    }

    NightlyDrifts without(List<NightGap.Drifted> some) {
        return new NightlyDrifts(
                gaps.stream().filter(gap -> !some.contains(gap)).toList());
    }

    /** What went by in each gap: months; and of the year's cosine and sine, if the year counts. */
    double[][] design(boolean withYear) {
        return gaps.stream()
                .map(gap -> went(gap.left().at(), gap.found().at(), withYear))
                .toArray(double[][]::new);
    }

    /** The same for any stretch of time. */
    static double[] went(Instant from, Instant to, boolean withYear) {
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
     * Of what was observed, arcmin². Two drifts that meet in a night on which the axis was not sighted anew after it was
     * moved, or not moved at all, share that night's error with opposite signs; other nights' ends are taken to be independent.
     *
     * @param scatterArcmin what comes and goes in each gap besides
     */
    double[][] covariance(Direction direction, double scatterArcmin) {
        int n = gaps.size();
        double[][] covariance = new double[n][n];
        for (int i = 0; i < n; i++) {
            NightGap.Drifted gap = gaps.get(i);
            covariance[i][i] =
                    variance(gap.left(), direction) + variance(gap.found(), direction) + scatterArcmin * scatterArcmin;
            boolean isSharing = i + 1 < n
                    && gap.to().id().equals(gaps.get(i + 1).from().id())
                    && !gap.to().isSeenAnew();
            if (isSharing) {
                double shared = -variance(gap.found(), direction);
                covariance[i][i + 1] = shared;
                covariance[i + 1][i] = shared;
            }
        }
        return covariance;
    }

    private static double variance(AxisAtTime then, Direction direction) {
        return direction.variance(then.covariance()) + LEAST_SIGMA_ARCMIN * LEAST_SIGMA_ARCMIN;
    }

    /** Longest time without a night, days. */
    double longestGapDays() {
        return gaps.stream()
                .mapToDouble(gap -> gap.over().toSeconds() / 86_400.0)
                .max()
                .orElse(0);
    }
}
