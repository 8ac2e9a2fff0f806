package polewright.night.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.sky.almanac.SunDepth;
import polewright.sky.angle.Angle;
import polewright.sky.body.SunGuard;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.Interval;

/**
 * That the Sun is about when something is looked at: it has barely set, is soon to rise, or stands near by below the
 * horizon, where the telescope would follow a planet into the day.
 *
 * @param crossing whether it is its setting or its rising that matters
 * @param at when the Sun sets or rises
 * @param near how far it is from the target, from the edge of its disc, where that is less than
 *     {@link SunGuard#KEEP_AWAY}
 */
public record SunBeside(Crossing crossing, Instant at, Optional<Angle> near) {
    /** Looking so shortly before the Sun rises is easily drawn out until it has risen. */
    private static final Duration BEFORE_RISING = Duration.ofHours(1);
    /** Whoever is to look so soon after it has set is easily early. */
    private static final Duration AFTER_SETTING = Duration.ofMinutes(15);

    /** What the Sun does. */
    public enum Crossing {
        SETS,
        RISES
    }

    /**
     * What there is to mind.
     *
     * @param when from when to when it is looked at; both the same for a moment
     * @return nothing when the Sun is neither near the target nor near its rising or setting, or does neither; in a night
     *     that is hardly one, both
     */
    static List<SunBeside> of(Evening evening, Showing showing, Interval when) {
        Interval whole = evening.darkness().noonToNoon();
        Interval down = evening.darkness().below(SunDepth.SUNSET).orElse(whole);
        Optional<Instant> sets = Optional.of(down.from()).filter(at -> at.isAfter(whole.from()));
        Optional<Instant> rises = Optional.of(down.to()).filter(at -> at.isBefore(whole.to()));
        Optional<Angle> near = Stream.of(when.from(), when.to())
                .map(at -> distance(evening, showing, at))
                .min(Angle::compareTo)
                .filter(distance -> distance.compareTo(SunGuard.KEEP_AWAY) < 0);
        Optional<SunBeside> rising = rises.map(at -> new SunBeside(Crossing.RISES, at, near));
        Optional<SunBeside> setting = sets.map(at -> new SunBeside(Crossing.SETS, at, near));
        List<SunBeside> soon = Stream.of(
                        setting.filter(set -> when.from().isBefore(set.at().plus(AFTER_SETTING))),
                        rising.filter(rise -> when.to().isAfter(rise.at().minus(BEFORE_RISING))))
                .flatMap(Optional::stream)
                .toList();
        if (!soon.isEmpty()) {
            return soon;
        }
        boolean isMorning = when.to().isAfter(evening.darkness().midnight().at());
        return near.flatMap(distance -> isMorning ? rising.or(() -> setting) : setting.or(() -> rising)).stream()
                .toList();
    }

    private static Angle distance(Evening evening, Showing showing, Instant at) {
        ObservingMoment moment = evening.moment(at);
        return SunGuard.at(moment).distance(moment.airless(showing.path().at(at)));
    }
}
