package polewright.alignment.fix;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.mount.rig.Rig;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The night read otherwise. How far a screw goes is often not what was told, and that is no mistake: as told and otherwise,
 * the night is solved with screws known worse, so that no reading is better for taking them at their word.
 *
 * @param past before these steps
 * @param steps as told
 * @param asTold the night as told, with what does not fit set aside
 * @param lenient the same with screws known worse
 */
record NightReadAgain(
        CondensedPast past, Weather weather, List<Step> steps, Interpretation asTold, Interpretation lenient) {
    static NightReadAgain of(CondensedPast past, Weather weather, List<Step> steps, Interpretation asTold, Rig worse) {
        return new NightReadAgain(
                past,
                weather,
                steps,
                asTold,
                Contradictions.weigh(asTold.smoother().with(worse)));
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

    /** Whether it makes the night fit a hundred times better, or at all if nothing does as told. */
    boolean isWorthNaming(Candidate candidate) {
        return !lenient.night().settled()
                || Candidate.cost(lenient) - Candidate.cost(candidate.account()) > Contradictions.HUNDRED_TO_ONE;
    }

    private boolean mayBeMistaken() {
        return lenient.cost() > Contradictions.HUNDRED_TO_ONE;
    }

    /** Turns of one screw, of the other or of both at one place of the night: told as the likeliest, as likely as all three. */
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
        boolean settled = lenient.night().settled();
        double worthIt = settled ? Candidate.cost(lenient) - leastGain : Double.POSITIVE_INFINITY;
        // Where nothing fits as told, screws known worse are an assumption of their own.
        double otherwise = settled && asTold.night().settled()
                ? Math.max(0, asTold.cost() - lenient.cost())
                : DoubtedScrews.surcharge(lenient.smoother(), reading.night());
        return Contradictions.weighUnless(
                        reading.night().with(lenient.smoother().rig()), account -> account.leastCost() > worthIt)
                .filter(account -> account.night().settled() && Candidate.cost(account) < worthIt)
                .map(account -> Candidate.of(reading.mistake(), account, otherwise + reading.cost(account)));
    }
}
