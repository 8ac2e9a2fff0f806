package polewright.night.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import polewright.axis.reach.Reach;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.time.Interval;

/**
 * An order for the night.
 *
 * <p>From target to target, in time: of those that can be reached for a whole slot and stand nearly as high as they ever
 * will tonight (the sine of their altitude three quarters of its best), the ones that will soonest be gone come first; of
 * those that go within the same three quarters of an hour, the one with the shortest slew. What cannot be fitted in is left
 * over. The same night gives the same plan.
 *
 * @param slots in order of time, none over another
 * @param leftOver those for which no room was found
 */
public record NightPlan(List<Slot> slots, List<Showing> leftOver) {
    private static final Duration ABOUT_AS_SOON = Duration.ofMinutes(45);
    private static final double NEARLY = 0.75;
    private static final Duration STEP = Duration.ofMinutes(5);

    /** One target's turn. */
    public record Slot(Showing showing, Interval when) {}

    public NightPlan {
        slots = List.copyOf(slots);
        leftOver = List.copyOf(leftOver);
    }

    /**
     * The plan.
     *
     * @param chosen what is to be looked at, the dearest first
     * @param turn how long each is looked at
     * @param reach tells how high they stand
     */
    public static NightPlan of(List<Showing> chosen, Duration turn, Reach reach) {
        List<Showing> waiting = new ArrayList<>(chosen);
        List<Slot> slots = new ArrayList<>();
        Optional<Instant> start =
                waiting.stream().map(showing -> showing.windows().get(0).from()).min(Comparator.naturalOrder());
        Optional<Instant> end = waiting.stream()
                .map(showing ->
                        showing.windows().get(showing.windows().size() - 1).to())
                .max(Comparator.naturalOrder());
        if (start.isEmpty() || end.isEmpty()) {
            return new NightPlan(List.of(), List.of());
        }
        Instant now = start.get();
        Optional<HourAnglePlace> before = Optional.empty();
        while (!now.plus(turn).isAfter(end.get()) && !waiting.isEmpty()) {
            Interval slot = new Interval(now, now.plus(turn));
            List<Showing> ready = waiting.stream()
                    .filter(showing -> isHigh(showing, slot, reach))
                    .toList();
            Optional<Showing> next = next(ready, slot, before);
            if (next.isEmpty()) {
                now = now.plus(STEP);
                continue;
            }
            slots.add(new Slot(next.get(), slot));
            waiting.remove(next.get());
            before = Optional.of(next.get().path().at(slot.to()));
            now = slot.to();
        }
        return new NightPlan(slots, waiting);
    }

    private static boolean isHigh(Showing showing, Interval slot, Reach reach) {
        Instant middle = slot.from().plus(slot.length().dividedBy(2));
        return reach.altitudeSeen(showing.path().at(middle)).sin()
                >= NEARLY * showing.bestAltitude().sin();
    }

    private static Optional<Showing> next(List<Showing> waiting, Interval slot, Optional<HourAnglePlace> before) {
        Optional<Instant> soonest = waiting.stream()
                .flatMap(showing -> window(showing, slot).stream())
                .map(Interval::to)
                .min(Comparator.naturalOrder());
        return soonest.flatMap(gone -> waiting.stream()
                .filter(showing -> window(showing, slot)
                        .filter(window -> !window.to().isAfter(gone.plus(ABOUT_AS_SOON)))
                        .isPresent())
                .min(Comparator.comparingDouble((Showing showing) -> before.map(place ->
                                slew(place, showing.path().at(slot.from())).radians())
                        .orElse(0.0))));
    }

    /** The window that holds the whole slot. */
    private static Optional<Interval> window(Showing showing, Interval slot) {
        return showing.windows().stream()
                .filter(window -> window.contains(slot.from()) && window.contains(slot.to()))
                .findFirst();
    }

    /** Both axes run at once: the longer of the two turns. */
    static Angle slew(HourAnglePlace from, HourAnglePlace to) {
        double hourAngle =
                to.hourAngle().minus(from.hourAngle()).wrappedSigned().abs().radians();
        double declination = to.declination().minus(from.declination()).abs().radians();
        return new Angle(Math.max(hourAngle, declination));
    }

    /** All slews between the slots. */
    public Angle slewed() {
        double sum = 0;
        for (int i = 1; i < slots.size(); i++) {
            Slot earlier = slots.get(i - 1);
            Slot later = slots.get(i);
            sum += slew(
                            earlier.showing().path().at(earlier.when().to()),
                            later.showing().path().at(later.when().from()))
                    .radians();
        }
        return new Angle(sum);
    }
}
