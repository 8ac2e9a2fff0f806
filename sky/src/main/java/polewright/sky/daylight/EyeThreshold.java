package polewright.sky.daylight;

/**
 * The faintest star, as a magnitude outside the atmosphere, that a naked eye detects against a uniform background at a
 * known position.
 *
 * <p>I = C (1 + √(K B))², I in foot-candles, B in nanolamberts; C = 10^−9.80, K = 10^−1.90 below log B = 3.17, C =
 * 10^−8.35, K = 10^−5.90 above; V = −16.57 − 2.5 log I. Sources: S. Hecht, J. Opt. Soc. Am. 37 (1947) 59, after the
 * measurements of H. A. Knoll, R. Tousey and E. O. Hulburt, J. Opt. Soc. Am. 36 (1946) 480; with these constants in B.
 * E. Schaefer, PASP 102 (1990) 212; figures as in deanthedream/PrototypePlottingUtilsEXOSIMS,
 * VisualMagnitudes/telLimMags.py, e63dd6bb15b1, and, with the limit moved to 1645 nL, in aloistr/swisseph, swehel.c,
 * 3fd0f956d738.
 */
final class EyeThreshold {
    /** 1 lambert is 10⁴/π cd/m². */
    private static final double CD_PER_M2_PER_NANOLAMBERT = 1e-5 / Math.PI;

    private static final double DAY_FROM_LOG_NANOLAMBERT = 3.17;

    private EyeThreshold() {}

    /** V magnitude of that star. */
    static double magnitude(double backgroundCdPerM2) {
        double nanolambert = backgroundCdPerM2 / CD_PER_M2_PER_NANOLAMBERT;
        boolean isDay = Math.log10(nanolambert) > DAY_FROM_LOG_NANOLAMBERT;
        double logC = isDay ? -8.35 : -9.80;
        double logK = isDay ? -5.90 : -1.90;
        double logFootCandles = logC + 2 * Math.log10(1 + Math.sqrt(Math.pow(10, logK) * nanolambert));
        return -16.57 - 2.5 * logFootCandles;
    }

    /**
     * Diameter of the pupil, mm: 4.9 − 3 tanh(0.4 log L), L in cd/m². Source: P. Moon and D. E. Spencer, J. Opt. Soc.
     * Am. 34 (1944) 319, as in spitschan/WatsonYellott2012_PupilSize, wy_getPupilSize.m, 048d8048b5fd.
     */
    static double pupilMm(double cdPerM2) {
        return 4.9 - 3 * Math.tanh(0.4 * Math.log10(cdPerM2));
    }
}
