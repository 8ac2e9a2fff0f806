package polewright.planning.seasons;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.ScrewGains;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.planning.seasons.NightlyDrifts.Direction;
import polewright.session.event.NightEvent;
import polewright.sky.place.Site;

/**
 * Fits the line through the drifts.
 *
 * <p>First a robust fit finds outliers, such as a drift of a pier that was bumped, with Huber's weights (P. J. Huber,
 * Ann. Math. Stat. 35 (1964) 73; constant as in statsmodels, robust/norms.py). They are set aside, at most a quarter of
 * all. Then a least-squares fit adds as much scatter from night to night to the sightings' own uncertainty as brings χ²
 * to its expected value (R. C. Paule and J. Mandel, J. Res. NBS 87 (1982) 377; as in metafor, R/rma.uni.r). So the line
 * is never more certain than the agreement of the nights.
 *
 * <p>The yearly oscillation is kept only if the nights cover a year without long gaps, and if chance would improve the
 * fit as much less than once in a hundred times.
 */
final class PierFit {
    private static final int LEAST_DRIFTS = 3;
    private static final double LEAST_DAYS = 14;
    // A drift known no better than this is from a compass and does not constrain a pier.
    private static final double ROUGHEST_ARCMIN = 15;
    private static final int LEAST_DRIFTS_FOR_YEAR = 10;
    private static final double LEAST_DAYS_FOR_YEAR = 365;
    private static final double LONGEST_HOLE_DAYS = 100;
    private static final double CHANCE = 0.01;
    // Huber's constant, for 95 % efficiency without outliers.
    private static final double HUBER = 1.345;
    private static final double OUTLIER_DEVIATION = 4;
    private static final double SIGMA_PER_MEDIAN = 1.4826;
    private static final int ROUNDS = 30;
    private static final double MOST_SCATTER_ARCMIN = 120;

    private PierFit() {}

    static PierMotion of(List<NightGap> gaps) {
        NightlyDrifts all = new NightlyDrifts(gaps.stream()
                .filter(NightGap.Drifted.class::isInstance)
                .map(NightGap.Drifted.class::cast)
                .filter(gap -> gap.covariance().largestSigma().arcminutes() <= ROUGHEST_ARCMIN)
                .toList());
        if (all.count() < LEAST_DRIFTS) {
            return new PierMotion.NotYet("A trend needs " + (LEAST_DRIFTS + 1)
                    + " nights in a row that leave and find the axis to better than 15′; there "
                    + (all.count() == 1 ? "is 1 drift" : "are " + (all.count() == 0 ? "no" : all.count()) + " drifts")
                    + " between such nights so far");
        }
        double days = days(all);
        if (days < LEAST_DAYS) {
            return new PierMotion.NotYet("A trend needs two weeks; these nights cover " + Math.max(1, Math.round(days))
                    + (Math.round(days) <= 1 ? " day" : " days"));
        }
        boolean mayBeYearly = coversAYear(all);
        List<NightGap.Drifted> setAside = outliers(all, mayBeYearly);
        NightlyDrifts kept = all.without(setAside);
        boolean isYearly = mayBeYearly && coversAYear(kept) && isYearShown(kept);
        AxisTrend east = course(kept, Direction.EAST, isYearly);
        AxisTrend up = course(kept, Direction.UP, isYearly);
        NightEvent.Begun latest = gaps.get(gaps.size() - 1).to().begun();
        return new PierMotion.Fitted(
                kept.from(),
                kept.to(),
                east,
                up,
                kept.count(),
                setAside,
                undoing(
                        AxisOffset.ofArcminutes(east.arcminPerMonth(), up.arcminPerMonth()),
                        latest.site(),
                        latest.rig()));
    }

    private static double days(NightlyDrifts drifts) {
        return java.time.Duration.between(drifts.from(), drifts.to()).toSeconds() / 86_400.0;
    }

    private static boolean coversAYear(NightlyDrifts drifts) {
        return drifts.count() >= LEAST_DRIFTS_FOR_YEAR
                && days(drifts) >= LEAST_DAYS_FOR_YEAR
                && drifts.longestGapDays() <= LONGEST_HOLE_DAYS;
    }

    private static List<NightGap.Drifted> outliers(NightlyDrifts drifts, boolean withYear) {
        double[] east = deviations(drifts, Direction.EAST, withYear);
        double[] up = deviations(drifts, Direction.UP, withYear);
        List<NightGap.Drifted> outliers = new ArrayList<>();
        for (int i = 0; i < drifts.count(); i++) {
            if (Math.max(east[i], up[i]) > OUTLIER_DEVIATION) {
                outliers.add(drifts.gaps().get(i));
            }
        }
        // That many are not outliers: then the pier is unstable, and the line should show it by its uncertainty.
        return outliers.size() <= drifts.count() / 4 ? outliers : List.of();
    }

    /** Deviation of each drift from the robust line, in units of the usual deviation. */
    private static double[] deviations(NightlyDrifts drifts, Direction direction, boolean withYear) {
        double[][] design = drifts.design(withYear);
        double[] observed = drifts.observed(direction);
        double[][] own = drifts.covariance(direction, 0);
        int n = observed.length;
        double[] usual = new double[n];
        for (int i = 0; i < n; i++) {
            usual[i] = Math.sqrt(own[i][i]);
        }
        double[] weights = new double[n];
        Arrays.fill(weights, 1);
        double[] deviations = new double[n];
        for (int round = 0; round < ROUNDS; round++) {
            double[][] covariance = new double[n][n];
            for (int i = 0; i < n; i++) {
                covariance[i][i] = usual[i] * usual[i] / weights[i];
            }
            double[] residuals =
                    LeastSquares.fit(design, observed, covariance).residuals().toArray();
            double scatter = SIGMA_PER_MEDIAN * median(residuals);
            for (int i = 0; i < n; i++) {
                usual[i] = Math.hypot(Math.sqrt(own[i][i]), scatter);
                deviations[i] = Math.abs(residuals[i]) / usual[i];
                weights[i] = Math.min(1, HUBER / Math.max(deviations[i], 1e-9));
            }
        }
        return deviations;
    }

    private static double median(double[] residuals) {
        double[] sizes = Arrays.stream(residuals).map(Math::abs).sorted().toArray();
        int middle = sizes.length / 2;
        return sizes.length % 2 == 1 ? sizes[middle] : (sizes[middle - 1] + sizes[middle]) / 2;
    }

    /** Both directions together: a pier that warps with the year seldom does so along only one of them. */
    private static boolean isYearShown(NightlyDrifts drifts) {
        double gained = 0;
        double leftOver = 0;
        int freedom = 0;
        for (Direction direction : Direction.values()) {
            double[] observed = drifts.observed(direction);
            double scatter = scatter(drifts, direction, false);
            double[][] covariance = drifts.covariance(direction, scatter);
            LeastSquares line = LeastSquares.fit(drifts.design(false), observed, covariance);
            LeastSquares year = LeastSquares.fit(drifts.design(true), observed, covariance);
            gained += line.chiSquared() - year.chiSquared();
            leftOver += year.chiSquared();
            freedom += year.freedom();
        }
        double ratio = gained / 4 / (leftOver / freedom);
        return ratio > new FDistribution(4, freedom).inverseCumulativeProbability(1 - CHANCE);
    }

    private static AxisTrend course(NightlyDrifts drifts, Direction direction, boolean withYear) {
        double scatter = scatter(drifts, direction, withYear);
        LeastSquares fit = fit(drifts, direction, withYear, scatter);
        double rate = fit.value(0);
        double sigma = fit.sigma(0);
        double beyondChance = new TDistribution(fit.freedom()).inverseCumulativeProbability(1 - CHANCE / 2);
        return new AxisTrend(
                rate,
                sigma,
                Math.abs(rate) > beyondChance * sigma,
                scatter,
                withYear ? Optional.of(swing(fit)) : Optional.empty());
    }

    private static AxisTrend.Swing swing(LeastSquares fit) {
        double cosine = fit.value(1);
        double sine = fit.value(2);
        double size = Math.hypot(cosine, sine);
        double[][] c = fit.covariance().getData();
        double variance = size == 0
                ? Math.max(c[1][1], c[2][2])
                : (cosine * cosine * c[1][1] + 2 * cosine * sine * c[1][2] + sine * sine * c[2][2]) / (size * size);
        double phase = Math.atan2(sine, cosine) / (2 * Math.PI);
        return new AxisTrend.Swing(size, Math.sqrt(variance), phase - Math.floor(phase));
    }

    private static LeastSquares fit(NightlyDrifts drifts, Direction direction, boolean withYear, double scatter) {
        return LeastSquares.fit(
                drifts.design(withYear), drifts.observed(direction), drifts.covariance(direction, scatter));
    }

    /** The scatter, arcminutes, for which χ² equals the degrees of freedom; 0 if χ² is already smaller. */
    private static double scatter(NightlyDrifts drifts, Direction direction, boolean withYear) {
        LeastSquares without = fit(drifts, direction, withYear, 0);
        if (without.chiSquared() <= without.freedom()) {
            return 0;
        }
        double low = 0;
        double high = MOST_SCATTER_ARCMIN;
        for (int i = 0; i < 40; i++) {
            double middle = (low + high) / 2;
            boolean isTooLittle = fit(drifts, direction, withYear, middle).chiSquared() > without.freedom();
            low = isTooLittle ? middle : low;
            high = isTooLittle ? high : middle;
        }
        return high;
    }

    private static AxisState.Turns undoing(AxisOffset moved, Site site, Rig rig) {
        return ScrewGains.ofRig(rig).turnsBetween(AxisPointing.of(site, moved), AxisPointing.atPole(site), rig);
    }
}
