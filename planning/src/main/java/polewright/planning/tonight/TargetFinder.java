package polewright.planning.tonight;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import polewright.mount.reach.PointingLimits;
import polewright.mount.reach.Reachability;
import polewright.mount.reach.SkyPath;
import polewright.sky.almanac.SunDepth;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.body.PlanetAppearance;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.Interval;

/**
 * Finds when and how well each target of a list can be observed tonight.
 *
 * <p>Only while the Sun is down: the Moon and planets from half an hour after sunset to half an hour before sunrise
 * ({@link TwilightGuard}), or from sunset to sunrise if they were requested; everything else during the darkest part of
 * the night, at most astronomical darkness. So the telescope is never pointed at anything with the Sun up;
 * {@link TwilightCaution} covers targets near the Sun just after it sets or before it rises.
 */
public final class TargetFinder {
    // Planets move by at most one arcminute in ten minutes, the Moon by five.
    private static final Duration MOVING_STEP = Duration.ofMinutes(10);

    private final Evening evening;
    private final PointingLimits reach;
    private final Observing observing;
    private final Optional<Interval> advised;
    private final Optional<Interval> sunDown;
    private final Optional<Interval> dark;
    private final Instant reference;
    private final ObservingMoment moment;
    private final Optional<MoonPath> moon;
    // Moon and planets are computed at the same times: the shared part is computed once.
    private final Map<Instant, ObservingMoment> moments = new ConcurrentHashMap<>();

    /** For one evening and its observing purpose. */
    public TargetFinder(Evening evening, Observing observing) {
        this.evening = evening;
        this.reach = evening.reach();
        this.observing = observing;
        this.advised = TwilightGuard.within(evening).flatMap(this::fromNow);
        this.sunDown = evening.darkness().below(SunDepth.SUNSET).flatMap(this::fromNow);
        this.dark = evening.darkness()
                .below(SunDepth.ASTRONOMICAL)
                .or(() -> evening.darkness().below(SunDepth.NAUTICAL))
                .flatMap(this::fromNow);
        this.reference = evening.darkness().midnight().at();
        this.moment = evening.moment(reference);
        this.moon = sunDown.map(when -> MoonPath.of(evening, when));
    }

    private Optional<Interval> fromNow(Interval interval) {
        Instant now = evening.now();
        if (!now.isBefore(interval.to())) {
            return Optional.empty();
        }
        return Optional.of(now.isAfter(interval.from()) ? new Interval(now, interval.to()) : interval);
    }

    /** The outcome for each of them, in the given order. */
    public List<TargetOutcome> find(List<Target> targets) {
        return targets.stream().map(this::find).toList();
    }

    /** The observable ones, best first; requested targets come before the rest. */
    public static List<Observability> ranked(List<TargetOutcome> outcomes) {
        return outcomes.stream()
                .filter(TargetOutcome.Shows.class::isInstance)
                .map(outcome -> ((TargetOutcome.Shows) outcome).showing())
                .sorted(Comparator.comparing(
                                (Observability showing) -> !showing.target().isWanted())
                        .thenComparing(
                                Comparator.comparingDouble(Observability::score).reversed()))
                .toList();
    }

    /** The outcome for one target; planets with tonight's size and brightness. */
    public TargetOutcome find(Target listed) {
        Target target = ofTonight(listed);
        Optional<Interval> when = !target.isBrightBody() ? dark : target.isWanted() ? sunDown : advised;
        if (when.isEmpty()) {
            return new TargetOutcome.TooLight(target);
        }
        SkyPath path = path(target, when.get());
        Reachability outcome = reach.windows(path, when.get());
        return outcome instanceof Reachability.Reachable reachable
                ? new TargetOutcome.Shows(showing(target, path, reachable.windows()))
                : new TargetOutcome.OutOfReach(target, ((Reachability.Never) outcome).barrier());
    }

    private Target ofTonight(Target target) {
        if (!(target.body() instanceof SolarSystemBody body) || !body.isPlanet()) {
            return target;
        }
        PlanetAppearance planet = PlanetAppearance.at(body, moment);
        return new Target(
                body,
                target.kind(),
                planet.magnitude(),
                planet.diameter(),
                planet.diameter(),
                target.renown(),
                target.isWanted());
    }

    private SkyPath path(Target target, Interval when) {
        if (target.body() instanceof FixedStar star) {
            return SkyPath.fixed(moment.hourAngle(moment.apparent(star.star())), reference);
        }
        List<HourAnglePlace> places = new ArrayList<>();
        for (Instant at = when.from(); at.isBefore(when.to().plus(MOVING_STEP)); at = at.plus(MOVING_STEP)) {
            ObservingMoment then = moments.computeIfAbsent(at, evening::moment);
            places.add(then.hourAngle(Ephemeris.apparent(target.body(), then)));
        }
        return at -> {
            long millis = Math.max(0, Duration.between(when.from(), at).toMillis());
            int index = (int) Math.min(places.size() - 1L, millis / MOVING_STEP.toMillis());
            Instant known = when.from().plus(MOVING_STEP.multipliedBy(index));
            return SkyPath.fixed(places.get(index), known).at(at);
        };
    }

    /** The score of a target at any time of the night, 0 to 1: see {@link ObservabilityScore}. */
    double score(Observability showing, Instant at) {
        return ObservabilityScore.of(showing.target(), observing)
                .at(showing.path().at(at), moon.orElseThrow().at(at), reach);
    }

    private Observability showing(Target target, SkyPath path, List<Interval> windows) {
        ObservabilityScore scoring = ObservabilityScore.of(target, observing);
        List<MoonPath.Now> tried = tried(windows);
        MoonPath.Now best = tried.get(0);
        double bestScore = -1;
        for (MoonPath.Now now : tried) {
            double score = scoring.at(path.at(now.at()), now, reach);
            if (score > bestScore) {
                best = now;
                bestScore = score;
            }
        }
        HourAnglePlace place = path.at(best.at());
        Angle altitude = reach.altitudeSeen(place);
        Angle distance = best.distance(place);
        return new Observability(
                target,
                path,
                windows,
                best.at(),
                altitude,
                Transit.nearest(evening, target.body(), path, best.at()),
                distance,
                best.light().sky(altitude, distance),
                bestScore);
    }

    /** The ends of each window and the times in between at which the Moon was computed. */
    private List<MoonPath.Now> tried(List<Interval> windows) {
        MoonPath path = moon.orElseThrow();
        List<MoonPath.Now> times = new ArrayList<>();
        for (Interval window : windows) {
            times.add(path.at(window.from()));
            for (MoonPath.Now now : path.times()) {
                if (window.contains(now.at())) {
                    times.add(now);
                }
            }
            times.add(path.at(window.to()));
        }
        return times;
    }
}
