package polewright.planning.tonight;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.almanac.MoonTonight;
import polewright.sky.angle.Angle;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.Interval;

/**
 * The plan for tonight: a schedule of targets, other observable ones, and those that are not.
 *
 * @param observing the purpose for which targets are chosen
 * @param moon the Moon tonight
 * @param plan the schedule
 * @param others other targets with a good score, best first
 * @param missed requested targets that cannot be observed
 */
public record TonightsPlan(
        Evening evening,
        Observing observing,
        MoonTonight moon,
        NightPlan plan,
        List<Observability> others,
        List<TargetOutcome> missed) {
    /** The default number of targets, before gaps are filled. */
    public static final int USUAL_COUNT = 8;
    /** The largest number planned for one night. */
    public static final int MOST = 20;

    private static final int MOST_OTHERS = 8;
    // The number of candidates per slot, and the number tried to fill gaps.
    private static final int PLACED_PER_SLOT = 4;
    private static final int TRIED_IN_GAPS = 120;

    public TonightsPlan {
        others = List.copyOf(others);
        missed = List.copyOf(missed);
    }

    /**
     * The default plan: {@value #USUAL_COUNT} targets, and as many more as needed to leave no gap of an hour while
     * something good is up.
     *
     * @param targets all candidates, including those asked for
     */
    public static TonightsPlan usual(Evening evening, Observing observing, List<Target> targets) {
        return of(evening, observing, targets, USUAL_COUNT, MOST);
    }

    /**
     * A plan with at most {@code count} targets.
     *
     * @param targets all candidates, including those asked for
     */
    public static TonightsPlan of(Evening evening, Observing observing, List<Target> targets, int count) {
        return of(evening, observing, targets, count, count);
    }

    private static TonightsPlan of(
            Evening evening, Observing observing, List<Target> targets, int count, int mostWithGapsFilled) {
        TargetFinder finder = new TargetFinder(evening, observing);
        List<TargetOutcome> outcomes = finder.find(targets);
        List<Observability> ranked = TargetFinder.ranked(outcomes);
        List<Observability> placed = ranked.subList(0, Math.min(count * PLACED_PER_SLOT, ranked.size()));
        NightPlan best = NightPlanner.plan(placed, observing.turn(), count, finder::score);
        NightPlan plan = NightPlanner.span(placed)
                .map(span -> GapFilling.of(
                        best,
                        span.from(),
                        ranked.subList(0, Math.min(TRIED_IN_GAPS, ranked.size())),
                        observing.turn(),
                        mostWithGapsFilled,
                        finder::score))
                .orElse(best);
        Set<Observability> planned =
                plan.slots().stream().map(NightPlan.Slot::showing).collect(Collectors.toSet());
        List<Observability> others = new ArrayList<>();
        ranked.stream()
                .filter(showing -> !planned.contains(showing))
                .limit(MOST_OTHERS)
                .forEach(others::add);
        List<TargetOutcome> missed = outcomes.stream()
                .filter(outcome -> outcome.target().isWanted() && !(outcome instanceof TargetOutcome.Shows))
                .toList();
        return new TonightsPlan(
                evening, observing, MoonTonight.of(evening.site(), evening.darkness()), plan, others, missed);
    }

    /** Cautions about the Sun for everything planned or named; none on most nights. */
    public List<TwilightCaution> sunCautions() {
        List<TwilightCaution.Advised> advised = new ArrayList<>();
        plan.slots().forEach(slot -> advised.add(new TwilightCaution.Advised(slot.showing(), slot.when())));
        others.forEach(showing ->
                advised.add(new TwilightCaution.Advised(showing, new Interval(showing.best(), showing.best()))));
        return TwilightCaution.of(evening, advised);
    }

    /**
     * Distance from the Moon at the middle of an interval, centre to centre.
     *
     * @return empty if the Moon is not above the horizon then
     */
    public Optional<Angle> moonDistance(Observability showing, Interval when) {
        Instant middle = when.from().plus(when.length().dividedBy(2));
        if (moon.up().stream().noneMatch(up -> up.contains(middle))) {
            return Optional.empty();
        }
        ObservingMoment moment = evening.moment(middle);
        HourAnglePlace there = moment.hourAngle(SolarSystem.apparent(SolarSystemBody.MOON, moment));
        return Optional.of(new Angle(Vector3D.angle(
                MoonPath.unit(there), MoonPath.unit(showing.path().at(middle)))));
    }
}
