package polewright.planning.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import polewright.sky.almanac.SunDepth;
import polewright.sky.time.Interval;

/**
 * The half hour after sunset and the half hour before sunrise, in which nothing is advised: on the Sun's side of the sky who
 * is early, or stays on, points at the Sun, and on the other side the sky is still too bright to find anything by.
 */
final class TwilightGuard {
    private static final Duration KEPT_CLEAR = Duration.ofMinutes(30);

    private TwilightGuard() {}

    /** When the Sun sets; empty where it does not that day. */
    static Optional<Instant> sunset(Evening evening) {
        Interval whole = evening.darkness().noonToNoon();
        return evening.darkness().below(SunDepth.SUNSET).map(Interval::from).filter(at -> at.isAfter(whole.from()));
    }

    /** When it rises; empty where it does not that day. */
    static Optional<Instant> sunrise(Evening evening) {
        Interval whole = evening.darkness().noonToNoon();
        return evening.darkness().below(SunDepth.SUNSET).map(Interval::to).filter(at -> at.isBefore(whole.to()));
    }

    /** What is left of the time between sunset and sunrise. */
    static Optional<Interval> within(Evening evening) {
        return evening.darkness().below(SunDepth.SUNSET).flatMap(night -> {
            Instant from = sunset(evening).map(at -> at.plus(KEPT_CLEAR)).orElse(night.from());
            Instant to = sunrise(evening).map(at -> at.minus(KEPT_CLEAR)).orElse(night.to());
            return from.isBefore(to) ? Optional.of(new Interval(from, to)) : Optional.empty();
        });
    }
}
