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
 * A caution about the Sun, once for the whole plan: something is observed when it has barely set or is soon to rise, or
 * close to it while it is below the horizon, where the telescope would follow a planet into the day.
 *
 * @param crossing whether its setting or its rising matters
 * @param at when the Sun sets or rises
 * @param near the targets within {@link SunGuard#KEEP_AWAY} of its edge, in the order of the plan
 */
public record TwilightCaution(Crossing crossing, Instant at, List<Near> near) {
    /** Observing that ends this close to sunrise easily runs on past it. */
    private static final Duration BEFORE_RISING = Duration.ofHours(1);
    /** An observer who is due this soon after sunset is easily early. */
    private static final Duration AFTER_SETTING = Duration.ofMinutes(15);

    /** What the Sun does. */
    public enum Crossing {
        SETS,
        RISES
    }

    /** A target and how far it is from the Sun's edge when it is observed. */
    public record Near(Target target, Angle distance) {}

    /** Something that is advised, and when; both ends the same for a moment. */
    record Advised(Observability showing, Interval when) {}

    public TwilightCaution {
        near = List.copyOf(near);
    }

    /** One for the Sun's setting and one for its rising at the most, as far as anything advised calls for it. */
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

    /** Empty when the Sun is neither near nor about to rise or barely set; both in a night that is hardly one. */
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
