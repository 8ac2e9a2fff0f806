package polewright.planning.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import polewright.sky.almanac.SunDepth;
import polewright.sky.time.Interval;

/**
 * The half hour after sunset and the half hour before sunrise, in which nothing is advised: near the Sun, an observer
 * who starts early or stays late would point at it, and in the opposite direction the sky is still too bright to find
 * anything.
 */
final class TwilightGuard {
    private static final Duration KEPT_CLEAR = Duration.ofMinutes(30);

    private TwilightGuard() {}

    /** Sunset; empty if the Sun does not set that day. */
    static Optional<Instant> sunset(Evening evening) {
        Interval whole = evening.darkness().noonToNoon();
        return evening.darkness().below(SunDepth.SUNSET).map(Interval::from).filter(at -> at.isAfter(whole.from()));
    }

    /** Sunrise; empty if the Sun does not rise that day. */
    static Optional<Instant> sunrise(Evening evening) {
        Interval whole = evening.darkness().noonToNoon();
        return evening.darkness().below(SunDepth.SUNSET).map(Interval::to).filter(at -> at.isBefore(whole.to()));
    }

    /** The remaining time between sunset and sunrise. */
    static Optional<Interval> within(Evening evening) {
        return evening.darkness().below(SunDepth.SUNSET).flatMap(night -> {
            Instant from = sunset(evening).map(at -> at.plus(KEPT_CLEAR)).orElse(night.from());
            Instant to = sunrise(evening).map(at -> at.minus(KEPT_CLEAR)).orElse(night.to());
            return from.isBefore(to) ? Optional.of(new Interval(from, to)) : Optional.empty();
        });
    }
}
