package polewright.alignment.fix;

import java.util.Optional;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.place.Site;

/**
 * How much of a slipping screw's turns took effect, as the sightings before and after tell.
 *
 * @param share of the turns
 */
record SlippedFraction(double share) {
    // Less than that is nothing moved; more, and a screw that is weaker than the rig says will do.
    private static final double LEAST = 0.1;
    private static final double MOST = 0.85;
    // Anything from none to all of the turns: 1 sigma, as a share of them.
    private static final double EVENLY_SPREAD = 1 / Math.sqrt(12);

    /**
     * What it costs to take a turn as slipped: where a Gaussian is k times as wide it is k times as low.
     *
     * @param gainSigma how well the screw's effect is known, as a share
     */
    static double surcharge(double gainSigma) {
        return 2 * Math.max(0, Math.log(EVENLY_SPREAD / gainSigma));
    }

    static SlippedFraction of(Interpretation account, Step.Slipped slipped, Site site, Rig rig) {
        AxisState.Turns went = account.night().wentAt(slipped.seq());
        ScrewGains gains = account.night().last().gains();
        boolean isAzimuth = slipped.screw() == Step.Slipped.Which.AZIMUTH;
        double azimuthAsked = askedRad(rig.azimuthScrew(), slipped.told().azimuth(), site);
        double altitudeAsked = askedRad(rig.altitudeScrew(), slipped.told().altitude(), site);
        return new SlippedFraction(
                isAzimuth
                        ? (went.azimuth() - gains.altitudeIntoAzimuth() * altitudeAsked)
                                / (gains.azimuthFactor() * azimuthAsked)
                        : (went.altitude() - gains.azimuthIntoAltitude() * azimuthAsked)
                                / (gains.altitudeFactor() * altitudeAsked));
    }

    /** {@code a third}; nothing when that is no share that a screw slips by. */
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
