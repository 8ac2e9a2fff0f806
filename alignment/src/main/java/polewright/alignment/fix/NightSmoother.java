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
 * <p>Between two moves the axis stands still; call that a stand. Within the night the unknowns are the axis in each
 * stand and the four figures of the screws, tied together by the turns. An iterated Kalman smoother solves this: a pass
 * forward through the stands, a pass back, the sightings linearised anew about the result, until nothing moves. That is
 * Gauss–Newton on the whole night (B. M. Bell, "The iterated Kalman smoother as a Gauss–Newton method", SIAM J. Optim. 4
 * (1994) 626), at a cost that grows with the number of events and not with its cube.
 */
final class NightSmoother {
    private static final int MOST_PASSES = 25;
    private static final double SETTLED_RAD = 1e-8;
    private static final double NEAR_RAD = Angle.ofDegrees(0.3).radians();

    private final CondensedPast past;
    private final Rig rig;
    private final AxisState prior;
    private final List<Step> steps;
    private final List<StationaryInterval> stands;
    private final List<Step.Sighted> sightings;
    private final Map<Long, Place> places;

    NightSmoother(CondensedPast past, List<Step> steps) {
        this(past, past.rig(), steps, stands(past, steps), sightings(steps));
    }

    private NightSmoother(
            CondensedPast past,
            Rig rig,
            List<Step> steps,
            List<StationaryInterval> stands,
            List<Step.Sighted> sightings) {
        this.past = past;
        this.rig = rig;
        this.prior = past.leaves(rig);
        this.steps = steps;
        this.stands = stands;
        this.sightings = sightings;
        this.places = places(stands);
    }

    private static List<StationaryInterval> stands(CondensedPast past, List<Step> steps) {
        double scatter = past.scatter().factor();
        return scatter == 1 ? StationaryInterval.of(steps) : scattering(StationaryInterval.of(steps), scatter);
    }

    private static List<StationaryInterval> scattering(List<StationaryInterval> stands, double times) {
        return stands.stream().map(stand -> stand.scattering(times)).toList();
    }

    /** Where a sighting is to be found. */
    private record Place(int stand, int index) {}

    private static Map<Long, Place> places(List<StationaryInterval> stands) {
        Map<Long, Place> places = new HashMap<>();
        for (int i = 0; i < stands.size(); i++) {
            List<Step.Sighted> sightings = stands.get(i).seen().all();
            for (int j = 0; j < sightings.size(); j++) {
                places.put(sightings.get(j).seq(), new Place(i, j));
            }
        }
        return places;
    }

    /** The same night with another rig. */
    NightSmoother with(Rig other) {
        return other.equals(rig) ? this : new NightSmoother(past, other, steps, stands, sightings);
    }

    /** The same night with another move in the place of one of its own. */
    NightSmoother with(Step meant, Step told) {
        return new NightSmoother(
                past,
                rig,
                steps,
                stands.stream()
                        .map(s -> s.movedBy().filter(told::equals).isPresent() ? s.movedInsteadBy(meant) : s)
                        .toList(),
                sightings);
    }

    /** The same night with readings by eye that scatter so many times as far as stated. */
    NightSmoother scattering(double times) {
        return new NightSmoother(past, rig, steps, scattering(stands, times), sightings);
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

    /** How many figures the sightings by eye have that are believed. */
    int figuresByEye(LongPredicate believed) {
        return sightings.stream()
                .filter(s -> s.isByEye() && believed.test(s.seq()))
                .mapToInt(s -> s.model().size())
                .sum();
    }

    /** How many times their stated sigmas the errors of sightings by eye are held to be. */
    double scatter() {
        return past.scatter().factor();
    }

    /** How many times its stated sigma a sighting's errors are. */
    double scatterOf(Step.Sighted sighted) {
        Place place = place(sighted);
        return stands.get(place.stand()).seen().scatter(place.index());
    }

    /** A sighting about the axis as a solution of this night has it. */
    LinearisedSighting line(Step.Sighted sighted, SmoothedNight night) {
        Place place = place(sighted);
        return stands.get(place.stand())
                .seen()
                .line(place.index(), night.states().get(place.stand()));
    }

    /** The axis as it stood for a sighting. */
    AxisState stateFor(Step.Sighted sighted, SmoothedNight night) {
        return night.states().get(place(sighted).stand());
    }

    private Place place(Step.Sighted sighted) {
        return Objects.requireNonNull(places.get(sighted.seq()), "not of this night");
    }

    private List<boolean[]> believed(Set<Long> setAside) {
        return stands.stream().map(stand -> stand.seen().believed(setAside)).toList();
    }

    /** Solves with all sightings but those whose numbers are in {@code setAside}. */
    SmoothedNight solve(Set<Long> setAside) {
        List<boolean[]> believed = believed(setAside);
        return solve(believed, ForwardPass.firstGuess(rig, prior, stands, believed));
    }

    /** Solves with all sightings. */
    SmoothedNight solve(ForwardPass firstGuess) {
        return solve(believed(Set.of()), firstGuess);
    }

    /** How it looks at first with all sightings believed, each straight about what those before it tell. */
    ForwardPass firstGuess() {
        return ForwardPass.firstGuess(rig, prior, stands, believed(Set.of()));
    }

    /** The same; it saves work to be given that of a shorter night with the same past and rig. */
    ForwardPass firstGuess(ForwardPass ofShorterNight) {
        return ofShorterNight.continued(rig, prior, stands, believed(Set.of()));
    }

    /** Solves, trying first from a solution of a night that may not be much different: if so, quicker to the same end. */
    SmoothedNight solve(Set<Long> setAside, SmoothedNight near) {
        if (!near.settled()) {
            return solve(setAside);
        }
        List<boolean[]> believed = believed(setAside);
        List<LinearisationPoint> nearby = near.spots();
        SmoothedNight found = solve(believed, ForwardPass.about(nearby, rig, prior, stands, believed));
        boolean isNear = found.settled() && LinearisationPoint.farthest(nearby, found.spots()) < NEAR_RAD;
        // Farther off, sightings are no straight lines any more, and where the passes come to rest depends on their
        // start.
        return isNear ? found : solve(setAside);
    }

    /** Twice the negative logarithm of how probable the believed figures are, straight about a solution, but for a constant. */
    double costOfEvidence(Set<Long> setAside, SmoothedNight about) {
        return ForwardPass.about(about.spots(), rig, prior, stands, believed(setAside))
                .costOfEvidence();
    }

    /** A night with others believed, as a first look has it: every sighting as straight as about that solution. */
    SmoothedNight glance(Set<Long> setAside, SmoothedNight about) {
        return ForwardPass.about(about.spots(), rig, prior, stands, believed(setAside))
                .smoothed(true);
    }

    /** χ² between the sightings of each stand themselves, wherever the axis was. */
    double remainder(SmoothedNight night, Set<Long> setAside) {
        double remainder = 0;
        for (int i = 0; i < stands.size(); i++) {
            IntervalSightings seen = stands.get(i).seen();
            remainder += seen.about(LinearisationPoint.of(night.states().get(i)), seen.believed(setAside))
                    .remainder();
        }
        return remainder;
    }

    private SmoothedNight solve(List<boolean[]> believed, ForwardPass first) {
        ForwardPass latest = first;
        List<LinearisationPoint> spots = first.spots();
        boolean settled = false;
        for (int round = 0; round < MOST_PASSES && !settled; round++) {
            latest = ForwardPass.about(spots, rig, prior, stands, believed);
            List<LinearisationPoint> next = latest.spots();
            settled = LinearisationPoint.farthest(spots, next) < SETTLED_RAD;
            spots = next;
        }
        return latest.smoothed(settled);
    }

    /**
     * The same night by screws known worse, unless it goes on from steps that are condensed: what they say of the axis and of
     * the screws cannot be taken apart any more.
     */
    NightSmoother doubtingScrews() {
        return past.left().isPresent() ? this : with(DoubtedScrews.worse(rig));
    }

    /** The rig by which the turns are taken. */
    Rig rig() {
        return rig;
    }

    /** What is known before the first of these steps. */
    AxisState prior() {
        return prior;
    }

    /** How much of the azimuth that turns make may be due to the base's lean, 1 sigma. */
    double leanOnAzimuth() {
        return AxisState.leanOnAzimuth(prior.site(), rig);
    }

    /** The axis after the first of these steps, as they alone tell, by the solution of them all. */
    AxisState after(int first, SmoothedNight night, Set<Long> setAside) {
        List<StationaryInterval> some = stands(past, steps.subList(0, first));
        NightSmoother alone = new NightSmoother(past, rig, steps, some, sightings);
        return ForwardPass.about(night.spots().subList(0, some.size()), rig, prior, some, alone.believed(setAside))
                .last();
    }
}
