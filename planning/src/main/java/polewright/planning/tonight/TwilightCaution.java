package polewright.planning.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import polewright.sky.angle.Angle;
import polewright.sky.body.SunGuard;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.Interval;

/**
 * A caution about the Sun, once for the whole plan: something is observed just after sunset or just before sunrise, or
 * close to the Sun while it is below the horizon, so that the telescope would follow a planet into the day.
 *
 * @param crossing whether its setting or its rising matters
 * @param at time of sunset or sunrise
 * @param near the targets within {@link SunGuard#KEEP_AWAY} of its limb, in the order of the plan
 */
public record TwilightCaution(Crossing crossing, Instant at, List<Near> near) {
    /** Observing that ends this close to sunrise easily overruns it. */
    private static final Duration BEFORE_RISING = Duration.ofHours(1);
    /** An observer with a target this soon after sunset may well start early. */
    private static final Duration AFTER_SETTING = Duration.ofMinutes(15);

    /** Setting or rising of the Sun. */
    public enum Crossing {
        SETS,
        RISES
    }

    /** A target and its distance from the Sun's limb when it is observed. */
    public record Near(Target target, Angle distance) {}

    /** An advised target and when; both ends equal for a single moment. */
    record Advised(Observability showing, Interval when) {}

    public TwilightCaution {
        near = List.copyOf(near);
    }

    /** At most one for sunset and one for sunrise, if anything advised requires it. */
    static List<TwilightCaution> of(Evening evening, List<Advised> advised) {
        Map<Crossing, Map<Target, Angle>> near = new LinkedHashMap<>();
        for (Advised one : advised) {
            Optional<Angle> distance = near(evening, one);
            for (Crossing crossing : crossings(evening, one, distance.isPresent())) {
                Map<Target, Angle> distances = near.computeIfAbsent(crossing, key -> new LinkedHashMap<>());
                distance.ifPresent(angle -> distances.putIfAbsent(one.showing().target(), angle));
            }
        }
        List<TwilightCaution> cautions = new ArrayList<>();
        for (Crossing crossing : Crossing.values()) {
            at(evening, crossing)
                    .filter(at -> near.containsKey(crossing))
                    .ifPresent(at -> cautions.add(new TwilightCaution(
                            crossing,
                            at,
                            near.getOrDefault(crossing, Map.of()).entrySet().stream()
                                    .map(entry -> new Near(entry.getKey(), entry.getValue()))
                                    .toList())));
        }
        return cautions;
    }

    /** Empty if the Sun is neither near nor about to rise or just set; both in a very short night. */
    private static Set<Crossing> crossings(Evening evening, Advised one, boolean isNear) {
        Optional<Instant> sets = at(evening, Crossing.SETS);
        Optional<Instant> rises = at(evening, Crossing.RISES);
        Set<Crossing> soon = EnumSet.noneOf(Crossing.class);
        sets.filter(at -> one.when().from().isBefore(at.plus(AFTER_SETTING))).ifPresent(at -> soon.add(Crossing.SETS));
        rises.filter(at -> one.when().to().isAfter(at.minus(BEFORE_RISING))).ifPresent(at -> soon.add(Crossing.RISES));
        if (soon.isEmpty() && isNear) {
            boolean isMorning =
                    one.when().to().isAfter(evening.darkness().midnight().at());
            soon.add(sets.isEmpty() || (isMorning && rises.isPresent()) ? Crossing.RISES : Crossing.SETS);
        }
        return soon;
    }

    private static Optional<Instant> at(Evening evening, Crossing crossing) {
        return crossing == Crossing.SETS ? TwilightGuard.sunset(evening) : TwilightGuard.sunrise(evening);
    }

    private static Optional<Angle> near(Evening evening, Advised one) {
        return Stream.of(one.when().from(), one.when().to())
                .map(at -> {
                    ObservingMoment moment = evening.moment(at);
                    return SunGuard.at(moment)
                            .distance(moment.airless(one.showing().path().at(at)));
                })
                .min(Angle::compareTo)
                .filter(distance -> distance.compareTo(SunGuard.KEEP_AWAY) < 0);
    }
}
