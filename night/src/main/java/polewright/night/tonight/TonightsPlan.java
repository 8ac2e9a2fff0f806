package polewright.night.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.axis.rig.Camera;
import polewright.axis.rig.Optic;
import polewright.axis.rig.Rig;
import polewright.axis.work.WorkPreset;
import polewright.sky.almanac.MoonTonight;
import polewright.sky.angle.Angle;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.Interval;

/**
 * What to do with tonight: an order of targets, what else shows, and what does not.
 *
 * @param moon what the Moon does
 * @param field what the telescope shows at once
 * @param plan the order
 * @param others what else shows well, best first
 * @param missed what was asked for and cannot be looked at
 */
public record TonightsPlan(
        Evening evening,
        Purpose purpose,
        MoonTonight moon,
        Angle field,
        NightPlan plan,
        List<Showing> others,
        List<TargetOutcome> missed) {
    /** How many targets are planned if nothing is said. */
    public static final int USUAL_COUNT = 8;

    private static final Duration A_LOOK = Duration.ofMinutes(30);
    private static final Duration A_SERIES = Duration.ofMinutes(90);
    private static final int MOST_OTHERS = 8;
    // Wider than this it is a finder.
    private static final Angle WIDEST_EYEPIECE = Angle.ofDegrees(3);
    private static final Angle USUAL_FIELD = Angle.ofDegrees(0.8);

    public TonightsPlan {
        others = List.copyOf(others);
        missed = List.copyOf(missed);
    }

    /**
     * The plan.
     *
     * @param targets all that could be looked at, what was asked for among them
     * @param count how many are to be planned
     */
    public static TonightsPlan of(Evening evening, Purpose purpose, List<Target> targets, int count) {
        Angle field = field(evening.rig(), purpose);
        List<TargetOutcome> outcomes = new TargetFinder(evening, field).find(targets);
        List<Showing> ranked = TargetFinder.ranked(outcomes);
        List<Showing> chosen = ranked.subList(0, Math.min(count, ranked.size()));
        NightPlan plan = NightPlan.of(chosen, purpose == Purpose.EYES ? A_LOOK : A_SERIES, evening.reach());
        Set<Showing> planned =
                plan.slots().stream().map(NightPlan.Slot::showing).collect(Collectors.toSet());
        List<Showing> others = new ArrayList<>();
        ranked.stream()
                .filter(showing -> !planned.contains(showing))
                .limit(MOST_OTHERS)
                .forEach(others::add);
        List<TargetOutcome> missed = outcomes.stream()
                .filter(outcome -> outcome.target().isWanted() && !(outcome instanceof TargetOutcome.Shows))
                .toList();
        return new TonightsPlan(
                evening, purpose, MoonTonight.of(evening.site(), evening.darkness()), field, plan, others, missed);
    }

    /** What there is to mind of the Sun when something has its turn; empty for most. */
    public List<SunBeside> sunBeside(NightPlan.Slot slot) {
        return SunBeside.of(evening, slot.showing(), slot.when());
    }

    /** The same at the time when it shows best. */
    public List<SunBeside> sunBeside(Showing showing) {
        return SunBeside.of(evening, showing, new Interval(showing.best(), showing.best()));
    }

    /**
     * How far the Moon is from something at the middle of a time, centre to centre.
     *
     * @return empty when it is not over the horizon then
     */
    public Optional<Angle> moonDistance(Showing showing, Interval when) {
        Instant middle = when.from().plus(when.length().dividedBy(2));
        if (moon.up().stream().noneMatch(up -> up.contains(middle))) {
            return Optional.empty();
        }
        ObservingMoment moment = evening.moment(middle);
        HourAnglePlace there = moment.hourAngle(SolarSystem.apparent(SolarSystemBody.MOON, moment));
        return Optional.of(new Angle(Vector3D.angle(
                MoonPath.unit(there), MoonPath.unit(showing.path().at(middle)))));
    }

    private static Angle field(Rig rig, Purpose purpose) {
        if (purpose == Purpose.CAMERA) {
            return WorkPreset.mainCamera(rig).map(Camera::field).orElse(USUAL_FIELD);
        }
        return rig.optics().stream()
                .map(Optic::field)
                .filter(field -> field.compareTo(WIDEST_EYEPIECE) <= 0)
                .max(Comparator.naturalOrder())
                .orElse(USUAL_FIELD);
    }
}
