package polewright.session;

import java.util.List;
import polewright.alignment.fix.NightAsEntered;

/**
 * A figure of the mount that is much the same every night, but not quite: what several nights say of the next one.
 *
 * <p>Night i has its own figure, drawn with standard deviation τ about a mean μ that all share, and told with its own
 * variance. Neither μ nor τ is known: μ has a Gaussian prior, τ a half-Cauchy one, which suits a scatter that only two or
 * three nights tell of (A. Gelman, Bayesian Analysis 1 (2006) 515; cited from memory). For each τ the rest is closed; τ is
 * summed over. With few nights the outcome leans on the priors and is as unsure as they are; there is no night on which it
 * becomes too sure. τ is cut off at ten times its scale: no mount is as fickle as that.
 *
 * @param mean expected next time
 * @param sigma 1 sigma about that, for the next time: of μ and of τ together
 */
record FigureAcrossNights(double mean, double sigma) {
    private static final double LARGEST_SCALES = 10;
    private static final int STEPS = 100;

    /**
     * What is expected next time, after these.
     *
     * @param priorMean of μ
     * @param priorSigma of μ
     * @param scatterScale the median, near enough, of τ before anything was seen
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
     * @param variance for the next time
     */
    private record Given(double mean, double variance, double logLikelihood) {
        static Given scatter(double scatter, List<NightAsEntered> nights, double priorMean, double priorSigma) {
            // About the prior's mean, so that nothing large is taken from something large.
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
