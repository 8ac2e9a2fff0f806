package polewright.alignment.fix;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.LongPredicate;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;

/**
 * Least squares over a whole night.
 *
 * <p>Between two moves lies a stationary interval. The unknowns are the axis in each interval and the four screw
 * parameters, linked by the turns. An iterated Kalman smoother solves for them: a forward pass through the intervals, a
 * backward pass, and relinearisation of the sightings about the result, until it converges. This is Gauss–Newton on the
 * whole night (B. M. Bell, "The iterated Kalman smoother as a Gauss–Newton method", SIAM J. Optim. 4 (1994) 626), at a
 * cost that grows linearly with the number of events rather than with its cube.
 */
final class NightSmoother {
    private static final int MOST_PASSES = 25;
    private static final double CONVERGED_RAD = 1e-8;
    private static final double NEAR_RAD = Angle.ofDegrees(0.3).radians();

    private final CondensedPast past;
    private final Rig rig;
    private final AxisState prior;
    private final List<Step> steps;
    private final List<StationaryInterval> intervals;
    private final List<Step.Sighted> sightings;
    private final Map<Long, Place> places;

    NightSmoother(CondensedPast past, List<Step> steps) {
        this(past, past.rig(), steps, intervals(past, steps), sightings(steps));
    }

    private NightSmoother(
            CondensedPast past,
            Rig rig,
            List<Step> steps,
            List<StationaryInterval> intervals,
            List<Step.Sighted> sightings) {
        this.past = past;
        this.rig = rig;
        this.prior = past.leaves(rig);
        this.steps = steps;
        this.intervals = intervals;
        this.sightings = sightings;
        this.places = places(intervals);
    }

    private static List<StationaryInterval> intervals(CondensedPast past, List<Step> steps) {
        double scatter = past.scatter().factor();
        return scatter == 1 ? StationaryInterval.of(steps) : scattering(StationaryInterval.of(steps), scatter);
    }

    private static List<StationaryInterval> scattering(List<StationaryInterval> intervals, double times) {
        return intervals.stream().map(interval -> interval.scattering(times)).toList();
    }

    /** The position of a sighting: its interval, and its index there. */
    private record Place(int interval, int index) {}

    private static Map<Long, Place> places(List<StationaryInterval> intervals) {
        Map<Long, Place> places = new HashMap<>();
        for (int i = 0; i < intervals.size(); i++) {
            List<Step.Sighted> sightings = intervals.get(i).sightings().all();
            for (int j = 0; j < sightings.size(); j++) {
                places.put(sightings.get(j).seq(), new Place(i, j));
            }
        }
        return places;
    }

    /** The same night with another rig. */
    NightSmoother with(Rig other) {
        return other.equals(rig) ? this : new NightSmoother(past, other, steps, intervals, sightings);
    }

    /** The same night with one move replaced by another. */
    NightSmoother with(Step meant, Step entered) {
        return new NightSmoother(
                past,
                rig,
                steps,
                intervals.stream()
                        .map(s -> s.movedBy().filter(entered::equals).isPresent() ? s.movedInsteadBy(meant) : s)
                        .toList(),
                sightings);
    }

    /** The same night with the stated sigmas of readings by eye multiplied by a factor. */
    NightSmoother scattering(double times) {
        return new NightSmoother(past, rig, steps, scattering(intervals, times), sightings);
    }

    private static List<Step.Sighted> sightings(List<Step> steps) {
        return steps.stream()
                .filter(Step.Sighted.class::isInstance)
                .map(Step.Sighted.class::cast)
                .toList();
    }

    List<Step.Sighted> sightings() {
        return sightings;
    }

    /** The number of scalar measurements in the believed sightings by eye. */
    int figuresByEye(LongPredicate believed) {
        return sightings.stream()
                .filter(s -> s.sighting().isReadByEye() && believed.test(s.seq()))
                .mapToInt(s -> s.model().size())
                .sum();
    }

    /** The factor on the stated sigmas of sightings by eye. */
    double scatter() {
        return past.scatter().factor();
    }

    /** The factor on the stated sigma of one sighting. */
    double scatterOf(Step.Sighted sighted) {
        Place place = place(sighted);
        return intervals.get(place.interval()).sightings().scatter(place.index());
    }

    /** A sighting linearised about the axis of a solution of this night. */
    LinearisedSighting line(Step.Sighted sighted, SmoothedNight night) {
        Place place = place(sighted);
        return intervals
                .get(place.interval())
                .sightings()
                .line(place.index(), night.states().get(place.interval()));
    }

    /** The smoothed state in the interval of a sighting. */
    AxisState stateFor(Step.Sighted sighted, SmoothedNight night) {
        return night.states().get(place(sighted).interval());
    }

    private Place place(Step.Sighted sighted) {
        return Objects.requireNonNull(places.get(sighted.seq()), "not of this night");
    }

    private List<boolean[]> believed(Set<Long> setAside) {
        return intervals.stream()
                .map(interval -> interval.sightings().believed(setAside))
                .toList();
    }

    /** Solves with all sightings but those whose numbers are in {@code setAside}. */
    SmoothedNight solve(Set<Long> setAside) {
        List<boolean[]> believed = believed(setAside);
        return solve(believed, ForwardPass.firstGuess(rig, prior, intervals, believed));
    }

    /** Solves with all sightings. */
    SmoothedNight solve(ForwardPass firstGuess) {
        return solve(believed(Set.of()), firstGuess);
    }

    /** The first forward pass with all sightings believed, each linearised given those before it. */
    ForwardPass firstGuess() {
        return ForwardPass.firstGuess(rig, prior, intervals, believed(Set.of()));
    }

    /** The same, reusing that of a shorter night with the same past and rig. */
    ForwardPass firstGuess(ForwardPass ofShorterNight) {
        return ofShorterNight.continued(rig, prior, intervals, believed(Set.of()));
    }

    /** Solves, starting from the solution of a night that may be similar, which is quicker if it is. */
    SmoothedNight solve(Set<Long> setAside, SmoothedNight near) {
        if (!near.converged()) {
            return solve(setAside);
        }
        List<boolean[]> believed = believed(setAside);
        List<LinearisationPoint> nearby = near.points();
        SmoothedNight found = solve(believed, ForwardPass.about(nearby, rig, prior, intervals, believed));
        boolean isNear = found.converged() && LinearisationPoint.farthest(nearby, found.points()) < NEAR_RAD;
        // Farther away, sightings are no longer linear, and the solution would depend on the starting point.
        return isNear ? found : solve(setAside);
    }

    /** −2 ln of the likelihood of the believed measurements, linearised about a solution, up to a constant. */
    double costOfEvidence(Set<Long> setAside, SmoothedNight about) {
        return ForwardPass.about(about.points(), rig, prior, intervals, believed(setAside))
                .costOfEvidence();
    }

    /** One pass with other sightings believed, linearised about a given solution and not iterated. */
    SmoothedNight glance(Set<Long> setAside, SmoothedNight about) {
        return ForwardPass.about(about.points(), rig, prior, intervals, believed(setAside))
                .smoothed(true);
    }

    /** χ² of the sightings of each interval against each other, independent of the axis. */
    double remainder(SmoothedNight night, Set<Long> setAside) {
        double remainder = 0;
        for (int i = 0; i < intervals.size(); i++) {
            IntervalSightings seen = intervals.get(i).sightings();
            remainder += seen.about(LinearisationPoint.of(night.states().get(i)), seen.believed(setAside))
                    .remainder();
        }
        return remainder;
    }

    private SmoothedNight solve(List<boolean[]> believed, ForwardPass first) {
        ForwardPass latest = first;
        List<LinearisationPoint> points = first.points();
        boolean converged = false;
        for (int round = 0; round < MOST_PASSES && !converged; round++) {
            latest = ForwardPass.about(points, rig, prior, intervals, believed);
            List<LinearisationPoint> next = latest.points();
            converged = LinearisationPoint.farthest(points, next) < CONVERGED_RAD;
            points = next;
        }
        return latest.smoothed(converged);
    }

    /**
     * The same night with wider screw sigmas. Unchanged if it follows condensed steps, because their information about
     * the axis and about the screws can no longer be separated.
     */
    NightSmoother doubtingScrews() {
        return past.left().isPresent() ? this : with(DoubtedScrews.worse(rig));
    }

    /** The rig used to model the turns. */
    Rig rig() {
        return rig;
    }

    /** The state before the first of these steps. */
    AxisState prior() {
        return prior;
    }

    /** The relative error of azimuth per turn that a leaning base may cause, 1 sigma. */
    double leanOnAzimuth() {
        return AxisState.leanOnAzimuth(prior.site(), rig);
    }

    /** The filtered state after the first of these steps, linearised about the solution of them all. */
    AxisState after(int first, SmoothedNight night, Set<Long> setAside) {
        List<StationaryInterval> some = intervals(past, steps.subList(0, first));
        NightSmoother alone = new NightSmoother(past, rig, steps, some, sightings);
        return ForwardPass.about(night.points().subList(0, some.size()), rig, prior, some, alone.believed(setAside))
                .last();
    }
}
