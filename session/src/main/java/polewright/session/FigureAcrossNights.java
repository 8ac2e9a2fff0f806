package polewright.session;

import java.util.List;
import polewright.alignment.fix.NightAsEntered;

/**
 * A parameter of the mount that is nearly the same every night: its prediction for the next night from several earlier
 * ones.
 *
 * <p>Night i has its own value, drawn with standard deviation τ about a mean μ common to all, and measured with its own
 * variance. Neither μ nor τ is known: μ has a Gaussian prior, τ a half-Cauchy prior, which suits a scatter seen in only
 * two or three nights (A. Gelman, Bayesian Analysis 1 (2006) 515). For a given τ the rest has a
 * closed form; τ is integrated numerically. With few nights the result relies on the priors and is as uncertain as they
 * are; at no number of nights does it become overconfident. τ is cut off at ten times its scale: no mount varies that
 * much.
 *
 * @param mean prediction for the next night
 * @param sigma its 1 sigma: of μ and τ together
 */
record FigureAcrossNights(double mean, double sigma) {
    private static final double LARGEST_SCALES = 10;
    private static final int STEPS = 100;

    /**
     * The prediction after these nights.
     *
     * @param priorMean of μ
     * @param priorSigma of μ
     * @param scatterScale approximately the median of the prior of τ
     */
    static FigureAcrossNights of(
            List<NightAsEntered> nights, double priorMean, double priorSigma, double scatterScale) {
        double best = Double.NEGATIVE_INFINITY;
        double[] logWeights = new double[STEPS];
        Given[] given = new Given[STEPS];
        for (int i = 0; i < STEPS; i++) {
            double inScales = LARGEST_SCALES * (i + 0.5) / STEPS;
            given[i] = Given.scatter(inScales * scatterScale, nights, priorMean, priorSigma);
            logWeights[i] = given[i].logLikelihood() - Math.log1p(inScales * inScales);
            best = Math.max(best, logWeights[i]);
        }
        double total = 0;
        double mean = 0;
        double square = 0;
        for (int i = 0; i < STEPS; i++) {
            double weight = Math.exp(logWeights[i] - best);
            total += weight;
            mean += weight * given[i].mean();
            square += weight * (given[i].mean() * given[i].mean() + given[i].variance());
        }
        mean /= total;
        return new FigureAcrossNights(mean, Math.sqrt(Math.max(0, square / total - mean * mean)));
    }

    /**
     * The same with τ known.
     *
     * @param variance for the next night
     */
    private record Given(double mean, double variance, double logLikelihood) {
        static Given scatter(double scatter, List<NightAsEntered> nights, double priorMean, double priorSigma) {
            // Relative to the prior mean, to avoid cancellation.
            double precision = 1 / (priorSigma * priorSigma);
            double weighted = 0;
            double logLikelihood = 0;
            for (NightAsEntered night : nights) {
                double variance = night.variance() + scatter * scatter;
                double away = night.value() - priorMean;
                precision += 1 / variance;
                weighted += away / variance;
                logLikelihood -= (Math.log(variance) + away * away / variance) / 2;
            }
            double shift = weighted / precision;
            return new Given(
                    priorMean + shift,
                    1 / precision + scatter * scatter,
                    logLikelihood + (shift * weighted - Math.log(precision)) / 2);
        }
    }
}
