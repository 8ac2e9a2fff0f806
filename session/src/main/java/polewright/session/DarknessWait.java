package polewright.session;

import java.time.Instant;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.Daylight;
import polewright.alignment.advice.Situation;
import polewright.sky.almanac.Darkness;
import polewright.sky.almanac.SunDepth;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.Interval;
import polewright.sky.time.SkyTime;

/**
 * How long a night has to wait for darkness, and for what.
 *
 * @param sunDown when the Sun is down and stars are advised
 * @param starsShow when the first bright stars become visible: the end of civil twilight (common practice); empty if
 *     there is none
 * @param next the advice once the Sun is down
 */
public record DarknessWait(Instant sunDown, Optional<Instant> starsShow, Advice next) {
    /** Empty if nothing is waited for, or if the Sun does not set. */
    public static Optional<DarknessWait> of(NightState night) {
        if (!(night.advice() instanceof Advice.WaitForDark)) {
            return Optional.empty();
        }
        Darkness dark = Darkness.comingAt(night.begun().site(), night.now());
        return dark.below(SunDepth.SUNSET)
                .map(Interval::from)
                .map(sunDown -> new DarknessWait(
                        sunDown, dark.below(SunDepth.CIVIL).map(Interval::from), adviceAt(sunDown, night)));
    }

    private static Advice adviceAt(Instant sunDown, NightState night) {
        ObservingMoment moment = ObservingMoment.of(
                night.begun().site(), SkyTime.of(sunDown), night.begun().weather());
        Situation dark = night.situation().under(Daylight.NONE, BrightStars.upAt(moment));
        return NightState.advice(night.skipped().leaving(dark, moment), night.skipped(), sunDown);
    }
}
