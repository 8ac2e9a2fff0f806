package polewright.alignment.fix;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.mount.rig.Rig;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Reinterprets the night with possible mistakes corrected. Screw gains often differ from the rig description without
 * any mistake, so all readings, including the one as entered, are compared with wider screw sigmas.
 *
 * @param past before these steps
 * @param steps as entered
 * @param asEntered the night as entered, with outliers set aside
 * @param lenient the same with wider screw sigmas
 */
record NightReadAgain(
        CondensedPast past, Weather weather, List<Step> steps, Interpretation asEntered, Interpretation lenient) {
    static NightReadAgain of(
            CondensedPast past, Weather weather, List<Step> steps, Interpretation asEntered, Rig worse) {
        return new NightReadAgain(
                past,
                weather,
                steps,
                asEntered,
                Contradictions.weigh(asEntered.smoother().with(worse)));
    }

    /** Other readings of sightings, clock or site that make the night fit a hundred times better. */
    Stream<Candidate> misread() {
        Site site = past.site();
        Stream<Rereadings> single = lenient.sightings().stream()
                // No other reading can improve the fit more than leaving it out.
                .filter(s ->
                        lenient.setAside().contains(s.seq()) || lenient.innovation(s) > Contradictions.HUNDRED_TO_ONE)
                .flatMap(s -> Rereadings.ofOne(site, weather, past, steps, s));
        Stream<Rereadings> all = mayBeMistaken()
                ? Stream.concat(single, Rereadings.ofTheWholeNight(site, weather, past, steps))
                : single;
        return all.flatMap(reading -> weighed(reading, Contradictions.HUNDRED_TO_ONE).stream());
    }

    /** Unlogged turns at each place where they improve the fit. */
    Stream<Candidate> unlogged() {
        return mayBeMistaken() ? UnloggedTurns.Gap.of(steps).stream().flatMap(this::unlogged) : Stream.empty();
    }

    /** Whether it makes the night fit 100 times better, or makes it fit at all when the night as entered does not. */
    boolean isWorthNaming(Candidate candidate) {
        return !lenient.night().converged()
                || Candidate.cost(lenient) - Candidate.cost(candidate.interpretation()) > Contradictions.HUNDRED_TO_ONE;
    }

    private boolean mayBeMistaken() {
        return lenient.cost() > Contradictions.HUNDRED_TO_ONE;
    }

    /** Unlogged turns of one screw, the other or both at one place, merged into the most likely of the three. */
    private Stream<Candidate> unlogged(UnloggedTurns.Gap gap) {
        double leastGain = lenient.setAside().isEmpty() ? Contradictions.HUNDRED_TO_ONE : 0;
        Optional<Candidate> both = weighed(gap.both(past, steps), leastGain);
        if (both.isEmpty()) {
            return Stream.empty();
        }
        List<Candidate> all = Stream.concat(
                        both.stream(), gap.one(past, steps).flatMap(one -> weighed(one, leastGain).stream()))
                .sorted(Comparator.comparingDouble(Candidate::cost))
                .toList();
        return Stream.of(Candidate.together(all));
    }

    private Optional<Candidate> weighed(Rereadings reading, double leastGain) {
        boolean converged = lenient.night().converged();
        double costLimit = converged ? Candidate.cost(lenient) - leastGain : Double.POSITIVE_INFINITY;
        // If the night does not fit as entered, the wider screw sigmas are an assumption with its own cost.
        double rigSurcharge = converged && asEntered.night().converged()
                ? Math.max(0, asEntered.cost() - lenient.cost())
                : DoubtedScrews.surcharge(lenient.smoother(), reading.night());
        return Contradictions.weighUnless(
                        reading.night().with(lenient.smoother().rig()),
                        interpretation -> interpretation.leastCost() > costLimit)
                .filter(interpretation ->
                        interpretation.night().converged() && Candidate.cost(interpretation) < costLimit)
                .map(interpretation ->
                        Candidate.of(reading.mistake(), interpretation, rigSurcharge + reading.cost(interpretation)));
    }
}
