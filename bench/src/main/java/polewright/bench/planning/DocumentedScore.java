package polewright.bench.planning;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import polewright.alignment.work.WorkPreset;
import polewright.mount.reach.PointingLimits;
import polewright.planning.tonight.Evening;
import polewright.planning.tonight.Observing;
import polewright.planning.tonight.Target;
import polewright.sky.almanac.LunarPhase;
import polewright.sky.almanac.Moonlight;
import polewright.sky.almanac.SunDepth;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.PlanetAppearance;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.Interval;

/**
 * The score of an order, calculated as documented in docs/tonight.md, from real places at each time: nothing of it
 * comes from the package that it judges. Times are whole five minutes, counted from the first of the night.
 */
public final class DocumentedScore {
    static final Duration STEP = Duration.ofMinutes(5);
    private static final double IDLE_STEP = 0.1 / 12;

    private final Observing observing;
    private final List<Target> targets;
    private final Instant first;
    private final int turnSteps;
    private final int steps;
    /** By target and step; NaN while it cannot be observed. */
    private final double[][] merits;

    private final HourAnglePlace[][] places;
    private int begins = Integer.MAX_VALUE;

    public DocumentedScore(Evening evening, Observing observing, List<Target> targets) {
        this.observing = observing;
        this.targets = targets;
        this.turnSteps = (int) (observing.turn().toMinutes() / 5);
        Interval night = evening.darkness().sunsetToSunrise();
        Instant from = evening.now().isAfter(night.from()) ? evening.now() : night.from();
        this.first = Instant.ofEpochSecond((from.getEpochSecond() + 299) / 300 * 300);
        this.steps = (int) Math.max(0, Duration.between(first, night.to()).toMinutes() / 5);
        this.merits = new double[targets.size()][steps + 1];
        this.places = new HourAnglePlace[targets.size()][steps + 1];
        Optional<Interval> dark = evening.darkness()
                .below(SunDepth.ASTRONOMICAL)
                .or(() -> evening.darkness().below(SunDepth.NAUTICAL));
        PointingLimits reach = evening.reach();
        List<OptionalDouble> surfaces = targets.stream()
                .map(target -> surface(
                        target, evening.moment(evening.darkness().midnight().at())))
                .toList();
        for (int step = 0; step <= steps; step++) {
            Instant at = at(step);
            ObservingMoment moment = evening.moment(at);
            Moon moon = Moon.at(moment);
            for (int i = 0; i < targets.size(); i++) {
                Target target = targets.get(i);
                ApparentPlace place = Ephemeris.apparent(target.body(), moment);
                places[i][step] = moment.hourAngle(place);
                boolean isOpen = (isBright(target)
                                || dark.filter(hours -> hours.contains(at)).isPresent())
                        && reach.barrier(places[i][step]).isEmpty()
                        && !(isBright(target) && !target.isWanted() && isTwilight(at, night, evening));
                merits[i][step] = isOpen ? merit(target, surfaces.get(i), moment, place, moon, evening) : Double.NaN;
                begins = isOpen ? Math.min(begins, step) : begins;
            }
        }
    }

    private record Moon(ApparentPlace place, AirlessDirection direction, LunarPhase phase) {
        static Moon at(ObservingMoment moment) {
            ApparentPlace place = Ephemeris.apparent(SolarSystemBody.MOON, moment);
            return new Moon(place, moment.airless(place), LunarPhase.at(moment));
        }
    }

    int count() {
        return targets.size();
    }

    int steps() {
        return steps;
    }

    int turnSteps() {
        return turnSteps;
    }

    /** The score of one turn; NaN if it cannot be completed. */
    double turn(int target, int step) {
        if (step + turnSteps > steps) {
            return Double.NaN;
        }
        for (int i = step; i <= step + turnSteps; i++) {
            if (Double.isNaN(merits[target][i])) {
                return Double.NaN;
            }
        }
        double[] m = merits[target];
        // A turn of an odd number of steps has its middle between two of them.
        double middle = (m[step + turnSteps / 2] + m[step + (turnSteps + 1) / 2]) / 2;
        return (m[step] + middle + m[step + turnSteps]) / 3
                + (targets.get(target).isWanted() ? 1 : 0);
    }

    /**
     * The cost of beginning a target then, when the one before ended at another step; −1 for the first of the night.
     */
    double cost(int before, int ended, int target, int step) {
        if (before < 0) {
            return IDLE_STEP * (step - begins);
        }
        HourAnglePlace from = places[before][ended];
        HourAnglePlace to = places[target][step];
        double hourAngleDeg =
                Math.abs(to.hourAngle().minus(from.hourAngle()).wrappedSigned().degrees());
        double declinationDeg =
                Math.abs(to.declination().degrees() - from.declination().degrees());
        return IDLE_STEP * (step - ended) + 0.1 * Math.max(hourAngleDeg, declinationDeg) / 180;
    }

    /** A target's turn from a time on. */
    public record Turn(Target target, Instant from) {}

    /** The score of an order; NaN if one of its turns is not possible. */
    public double of(List<Turn> order) {
        double sum = 0;
        int before = -1;
        int ended = 0;
        List<Integer> observed = new ArrayList<>();
        for (Turn turn : order) {
            int target = index(turn.target());
            long seconds = Duration.between(first, turn.from()).toSeconds();
            int step = (int) (seconds / 300);
            if (seconds % 300 != 0 || step < ended || observed.contains(target)) {
                return Double.NaN;
            }
            sum += turn(target, step) - cost(before, ended, target, step);
            observed.add(target);
            before = target;
            ended = step + turnSteps;
        }
        return sum;
    }

    private int index(Target target) {
        for (int i = 0; i < targets.size(); i++) {
            if (targets.get(i).label().equals(target.label())) {
                return i;
            }
        }
        throw new IllegalArgumentException(target.label() + " is not among the targets");
    }

    private Instant at(int step) {
        return first.plus(STEP.multipliedBy(step));
    }

    private static boolean isBright(Target target) {
        return target.body() instanceof SolarSystemBody
                && target.body() != SolarSystemBody.URANUS
                && target.body() != SolarSystemBody.NEPTUNE;
    }

    private static boolean isTwilight(Instant at, Interval night, Evening evening) {
        Interval whole = evening.darkness().noonToNoon();
        boolean isDusk =
                night.from().isAfter(whole.from()) && at.isBefore(night.from().plusSeconds(1800));
        boolean isDawn =
                night.to().isBefore(whole.to()) && at.isAfter(night.to().minusSeconds(1800));
        return isDusk || isDawn;
    }

    private double merit(
            Target target,
            OptionalDouble surface,
            ObservingMoment moment,
            ApparentPlace place,
            Moon moon,
            Evening evening) {
        Angle altitude = moment.refracted(place).altitude();
        double height = Math.max(0, Math.sin(altitude.radians()));
        if (isBright(target)) {
            return height * 0.8 * work(target);
        }
        Angle distance = place.separation(moon.place());
        double sky = Moonlight.of(moon.direction().altitude(), moon.phase().phaseAngle())
                .sky(altitude, distance);
        double contrast = 0.5;
        if (surface.isPresent()) {
            double dilution = Math.pow(10, 0.4 * (surface.getAsDouble() - sky)) / 3;
            contrast = 1 / (1 + dilution);
            if (target.nature() == Target.Nature.CLUSTER) {
                contrast = (1 + contrast) / 2;
            }
        }
        double glareDeg = moon.direction().altitude().degrees() > 0
                ? 5 + 15 * moon.phase().litShare()
                : 0;
        double glare = glareDeg == 0 ? 1 : Math.min(1, distance.degrees() / glareDeg);
        return height
                * brightness(target, evening)
                * contrast
                * glare
                * renown(target)
                * fit(target, evening)
                * work(target);
    }

    private static OptionalDouble surface(Target target, ObservingMoment midnight) {
        if (target.body() instanceof SolarSystemBody body && !isBright(target)) {
            PlanetAppearance planet = PlanetAppearance.at(body, midnight);
            double area = Math.PI / 4 * Math.pow(planet.diameter().arcseconds(), 2);
            return OptionalDouble.of(planet.magnitude().orElseThrow() + 2.5 * Math.log10(area));
        }
        double area = Math.PI / 4 * target.major().arcseconds() * target.minor().arcseconds();
        if (target.magnitude().isEmpty() || area == 0) {
            return OptionalDouble.empty();
        }
        double magnitude = target.magnitude().getAsDouble() + 2.5 * Math.log10(area);
        return OptionalDouble.of(target.nature() == Target.Nature.NEBULA ? Math.max(21.5, magnitude) : magnitude);
    }

    private static double brightness(Target target, Evening evening) {
        OptionalDouble magnitude = target.body() instanceof SolarSystemBody body
                ? PlanetAppearance.at(
                                body,
                                evening.moment(evening.darkness().midnight().at()))
                        .magnitude()
                : target.magnitude();
        return magnitude.isPresent() ? Math.min(1, Math.max(0.02, (14 - magnitude.getAsDouble()) / 10)) : 0.1;
    }

    private static double renown(Target target) {
        return target.renown() == Target.Renown.FAMOUS ? 1 : target.renown() == Target.Renown.NAMED ? 0.75 : 0.4;
    }

    private double fit(Target target, Evening evening) {
        Angle extent = target.body() instanceof SolarSystemBody body
                ? PlanetAppearance.at(
                                body,
                                evening.moment(evening.darkness().midnight().at()))
                        .diameter()
                : target.major();
        double share = extent.degrees() / observing.field().degrees();
        if (share > 0.8) {
            return Math.sqrt(0.8 / share);
        }
        return share < 0.1 ? 0.3 + 7 * share : 1;
    }

    private double work(Target target) {
        double best = 0;
        for (WorkPreset kind : observing.kinds()) {
            boolean isBody = target.body() instanceof SolarSystemBody;
            boolean isCluster = target.nature() == Target.Nature.CLUSTER;
            boolean isStar = target.nature() == Target.Nature.STAR;
            double weight = switch (kind) {
                case CASUAL_LOOK, LOOK_BY_HAND -> isCluster ? 0.7 : 1;
                case PLANETS -> isBody || isStar ? 1 : isCluster ? 0.5 : 0.4;
                case SHORT_SUBS -> isBody ? 0.3 : isCluster ? 0.5 : 1;
                case LONG_GUIDED_SUBS -> isBody ? 0.15 : isCluster ? 0.4 : 1;
            };
            best = Math.max(best, weight);
        }
        return best;
    }
}
