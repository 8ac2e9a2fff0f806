package polewright.alignment.fix;

import java.util.Optional;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.place.Site;

/**
 * The fraction of a slipping screw's turns that took effect, from the sightings before and after.
 *
 * @param share of the turns, 0 to 1
 */
record SlippedFraction(double share) {
    // Below the first, nothing moved; above the second, a screw weaker than the rig says explains it as well.
    private static final double LEAST = 0.1;
    private static final double MOST = 0.85;
    // Uniform from none to all of the turns: 1 sigma, as a fraction.
    private static final double EVENLY_SPREAD = 1 / Math.sqrt(12);

    /**
     * Prior cost of assuming a slip: a Gaussian k times as wide has 1/k of the peak density.
     *
     * @param gainSigma relative sigma of the screw's gain
     */
    static double surcharge(double gainSigma) {
        return 2 * Math.max(0, Math.log(EVENLY_SPREAD / gainSigma));
    }

    static SlippedFraction of(Interpretation interpretation, Step.Slipped slipped, Site site, Rig rig) {
        AxisState.Turns went = interpretation.night().wentAt(slipped.seq());
        ScrewGains gains = interpretation.night().last().gains();
        boolean isAzimuth = slipped.screw() == Step.Slipped.Which.AZIMUTH;
        double azimuthAsked = askedRad(rig.azimuthScrew(), slipped.entered().azimuth(), site);
        double altitudeAsked = askedRad(rig.altitudeScrew(), slipped.entered().altitude(), site);
        return new SlippedFraction(
                isAzimuth
                        ? (went.azimuth() - gains.altitudeIntoAzimuth() * altitudeAsked)
                                / (gains.azimuthFactor() * azimuthAsked)
                        : (went.altitude() - gains.azimuthIntoAltitude() * azimuthAsked)
                                / (gains.altitudeFactor() * altitudeAsked));
    }

    /** For example {@code a third}; empty if the fraction does not suggest a slip. */
    Optional<String> words() {
        if (!(share > LEAST && share < MOST)) {
            return Optional.empty();
        }
        return Optional.of(
                share < 0.29
                        ? "a quarter"
                        : share < 0.41
                                ? "a third"
                                : share < 0.58 ? "half" : share < 0.71 ? "two thirds" : "three quarters");
    }

    private static double askedRad(Screw screw, HandTurns turns, Site site) {
        return screw.move(turns.net(), site.poleAltitude()).radians();
    }
}
