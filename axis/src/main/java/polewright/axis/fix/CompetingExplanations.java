package polewright.axis.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import polewright.axis.rig.Rig;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * When a night does not fit as it was told, which explanations are left, how likely each is, and where they together put the
 * axis. What is a hundred times less likely than the best is ruled out. A mistake is considered once the night fits a
 * hundred times better with it, and then counts for as little as it is made seldom.
 *
 * @param best the night as it was told, with what does not fit set aside
 * @param live those that have not been ruled out, the likeliest first; never empty
 */
record CompetingExplanations(Account best, List<Candidate> live) {
    // More than a night by eye has; each costs some thirty solutions.
    private static final int MOST_STEPS_READ_AGAIN = 48;
    // Wedges go 25 % farther or less far than their figures say, where a rig says 15 % (common practice).
    private static final double REAL_SCREWS = 2;
    private static final int MOST_NAMED = 3;
    private static final double WORTH_NAMING = 0.05;
    private static final double WORTH_DOUBTING = 0.2;

    /**
     * One way to explain the night.
     *
     * @param cost in units of χ²; the less, the likelier
     */
    private record Candidate(Optional<Mistake> mistake, Account account, double cost) {
        static Candidate asTold(Account account) {
            return new Candidate(Optional.empty(), account, account.cost());
        }

        boolean isOfThisSite(Site site) {
            return account.night().last().site().equals(site);
        }

        /** Whether what the sightings say cannot be used before the mistake is corrected. */
        boolean isOfEverything() {
            return mistake.filter(m -> m instanceof Mistake.ClockWrong || m instanceof Mistake.SiteWrong)
                    .isPresent();
        }

        String words() {
            if (mistake.isEmpty()) {
                return notUsed(account.setAside());
            }
            Mistake made = mistake.get();
            if (made instanceof Mistake.TurnMistaken turn) {
                return "at turn #" + turn.seq() + " " + turn.words();
            } else if (made instanceof Mistake.SightingMisread sighting) {
                return "at sighting #" + sighting.seq() + " " + sighting.words();
            }
            return made.words();
        }
    }

    /**
     * The explanations of a night.
     *
     * @param learned the rig with its screws going as the night shows
     * @param asTold the night as told, with what does not fit set aside
     */
    static CompetingExplanations of(Past past, Weather weather, Rig learned, List<Step> steps, Account asTold) {
        boolean settled = asTold.night().settled();
        if (settled && asTold.isUnsuspicious()) {
            return new CompetingExplanations(asTold, List.of(Candidate.asTold(asTold)));
        }
        List<Candidate> all = new ArrayList<>();
        if (settled) {
            asTold.believingOneOfTheAccused().map(Candidate::asTold).forEach(all::add);
        }
        if (!settled || !asTold.isUnremarkable()) {
            TurnSuspects.of(past.site(), learned, steps, asTold).stream()
                    .filter(suspected -> TurnSuspects.isWorthNaming(asTold, suspected))
                    .map(suspected -> new Candidate(
                            Optional.of(suspected.mistake()),
                            suspected.account(),
                            suspected.account().cost() + Rereadings.SELDOM))
                    .forEach(all::add);
        }
        // What is condensed cannot be read again.
        if (past.left().isEmpty() && steps.size() <= MOST_STEPS_READ_AGAIN) {
            rereadings(past, weather, steps, asTold, DoubtedScrews.worse(learned, REAL_SCREWS))
                    .filter(candidate -> !isOneThatIsNotUsed(candidate, all))
                    .toList()
                    .forEach(all::add);
        }
        if (all.isEmpty()) {
            return new CompetingExplanations(asTold, List.of(Candidate.asTold(asTold)));
        }
        all.sort(Comparator.comparingDouble(Candidate::cost));
        double ruledOut = all.get(0).cost() + Contradictions.HUNDRED_TO_ONE;
        return new CompetingExplanations(
                asTold, all.stream().takeWhile(c -> c.cost() < ruledOut).toList());
    }

    /** Why a sighting is wrong that is not used anyway makes no difference to the axis. */
    private static boolean isOneThatIsNotUsed(Candidate candidate, List<Candidate> asTold) {
        return candidate.mistake().orElse(null) instanceof Mistake.SightingMisread misread
                && asTold.stream()
                        .anyMatch(c ->
                                c.mistake().isEmpty() && c.account().setAside().contains(misread.seq()));
    }

    /**
     * The night read otherwise. How far a screw goes is often not what was told, and that is no mistake: as told and otherwise,
     * the night is solved with screws known worse, so that no reading is better for taking them at their word.
     */
    private static Stream<Candidate> rereadings(
            Past past, Weather weather, List<Step> steps, Account asTold, Rig worse) {
        Site site = past.site();
        Account lenient = Contradictions.weigh(asTold.smoother().with(worse));
        Stream<Rereadings> single = lenient.sightings().stream()
                // No reading of it can gain more than leaving it out does.
                .filter(s ->
                        lenient.setAside().contains(s.seq()) || lenient.innovation(s) > Contradictions.HUNDRED_TO_ONE)
                .flatMap(s -> Rereadings.ofOne(site, weather, past, steps, s));
        Stream<Rereadings> all = lenient.cost() > Contradictions.HUNDRED_TO_ONE
                ? Stream.concat(single, Rereadings.ofTheWholeNight(site, weather, past, steps))
                : single;
        return all.flatMap(reading -> weighed(reading, worse, asTold, lenient).stream());
    }

    private static Optional<Candidate> weighed(Rereadings reading, Rig worse, Account asTold, Account lenient) {
        boolean settled = lenient.night().settled();
        double worthIt = settled ? lenient.cost() - Contradictions.HUNDRED_TO_ONE : Double.POSITIVE_INFINITY;
        // Where nothing fits as told, screws known worse are an assumption of their own.
        double otherwise = settled && asTold.night().settled()
                ? Math.max(0, asTold.cost() - lenient.cost())
                : DoubtedScrews.surcharge(lenient.smoother(), reading.night());
        return Contradictions.weighUnless(reading.night().with(worse), account -> account.leastCost() > worthIt)
                .filter(account -> account.night().settled() && account.cost() < worthIt)
                .map(account -> new Candidate(
                        Optional.of(reading.mistake()), account, account.cost() + otherwise + reading.surcharge()));
    }

    List<Explanation> explanations() {
        double[] weights = weights(live);
        List<Explanation> all = new ArrayList<>();
        for (int i = 0; i < weights.length; i++) {
            Candidate candidate = live.get(i);
            all.add(new Explanation(
                    candidate.mistake(),
                    candidate.account().setAside(),
                    weights[i],
                    candidate.account().night().last()));
        }
        return List.copyOf(all);
    }

    private static double[] weights(List<Candidate> candidates) {
        double[] weights = candidates.stream()
                .mapToDouble(c -> Math.exp((candidates.get(0).cost() - c.cost()) / 2))
                .toArray();
        double sum = 0;
        for (double weight : weights) {
            sum += weight;
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
        return weights;
    }

    /** The axis and the screws by all of them together: no place that is still possible is left out. */
    AxisState state() {
        boolean isAsTold = live.stream().allMatch(c -> c.mistake().isEmpty());
        if (isAsTold && !best.quarrelMatters()) {
            return best.night().last();
        }
        Site site = best.night().last().site();
        List<Candidate> here = live.stream().filter(c -> c.isOfThisSite(site)).toList();
        return here.isEmpty()
                ? best.night().last()
                : AxisState.mixture(
                        here.stream().map(c -> c.account().night().last()).toList(), weights(here));
    }

    /** The night by the explanation that is likelier than all others together; as it was told, if there is none. */
    Account likeliest() {
        Candidate first = live.get(0);
        return first.mistake().isPresent() && weights(live)[0] > 0.5 ? first.account() : best;
    }

    /**
     * How sure it is which way the screws go, when a turn may have gone the other way: by a hand once, or by a screw that always
     * does. One turn does not tell which.
     */
    ScrewSenses doubted(ScrewSenses senses, List<Step> steps) {
        double azimuth = 0;
        double altitude = 0;
        double[] weights = weights(live);
        for (int i = 0; i < weights.length; i++) {
            if (live.get(i).mistake().orElse(null) instanceof Mistake.TurnMistaken mistaken
                    && mistaken.meant() instanceof Step.Turned meant) {
                Step.Turned told = told(steps, mistaken.seq());
                azimuth += isReversed(told.azimuthTurns(), meant.azimuthTurns()) ? weights[i] : 0;
                altitude += isReversed(told.altitudeTurns(), meant.altitudeTurns()) ? weights[i] : 0;
            }
        }
        return new ScrewSenses(
                Math.min(senses.azimuth(), 1 - azimuth / 2),
                Math.min(senses.altitude(), 1 - altitude / 2),
                senses.azimuthTried() || azimuth > 0,
                senses.altitudeTried() || altitude > 0,
                senses.otherwise());
    }

    private static Step.Turned told(List<Step> steps, long seq) {
        return steps.stream()
                .filter(step -> step.seq() == seq)
                .filter(Step.Turned.class::isInstance)
                .map(Step.Turned.class::cast)
                .findFirst()
                .orElseThrow();
    }

    private static boolean isReversed(double told, double meant) {
        return told * meant < 0;
    }

    /** Why the outcome is dubious, and about what; empty when what is left of doubt matters to nobody. */
    Optional<FixSolver.Doubt> doubt() {
        if (live.stream().allMatch(c -> c.mistake().isEmpty())) {
            return best.night().settled()
                    ? Optional.of(best).filter(Account::quarrelMatters).map(quarrel -> ofTheAxis(accusation()))
                    : Optional.of(
                            ofTheAxis("the sightings do not settle on one axis; undo the last one and take another"));
        }
        Candidate likeliest = live.get(0);
        boolean agree = live.stream().noneMatch(c -> differ(c, likeliest));
        if (!isTurnInDoubt() && mistaken() < WORTH_DOUBTING) {
            return Optional.empty();
        }
        boolean isOver = agree && !likeliest.isOfEverything();
        return Optional.of(new FixSolver.Doubt(reason(), isOver ? Fix.Dispute.WHAT_HAPPENED : Fix.Dispute.THE_AXIS));
    }

    private static FixSolver.Doubt ofTheAxis(String reason) {
        return FixSolver.Doubt.ofTheAxis(reason);
    }

    private boolean isTurnInDoubt() {
        return live.stream().anyMatch(c -> c.mistake().orElse(null) instanceof Mistake.TurnMistaken);
    }

    /** Probability that something was entered wrongly, other than sightings that are not used. */
    private double mistaken() {
        double[] weights = weights(live);
        double mistaken = 0;
        for (int i = 0; i < weights.length; i++) {
            mistaken += live.get(i).mistake().isPresent() ? weights[i] : 0;
        }
        return mistaken;
    }

    private static boolean differ(Candidate one, Candidate other) {
        AxisState here = one.account().night().last();
        AxisState there = other.account().night().last();
        return !here.site().equals(there.site()) || one.account().differsNowFrom(other.account());
    }

    private static String notUsed(Set<Long> sightings) {
        if (sightings.isEmpty()) {
            return "everything is as entered";
        }
        return (sightings.size() == 1 ? "sighting " : "sightings ")
                + numbers(sightings)
                + (sightings.size() == 1 ? " is wrong" : " are wrong");
    }

    private String accusation() {
        return "sightings " + numbers(best.accusedAlike())
                + " contradict each other, and nothing says which is right; one more, best of another kind, decides";
    }

    private static String numbers(Set<Long> sightings) {
        return new TreeSet<>(sightings).stream().map(s -> "#" + s).collect(Collectors.joining(" and "));
    }

    private String reason() {
        double[] weights = weights(live);
        List<String> choices = new ArrayList<>();
        for (int i = 0; i < Math.min(MOST_NAMED, weights.length); i++) {
            if (i == 0 || weights[i] > WORTH_NAMING) {
                choices.add(live.get(i).words() + String.format(Locale.ROOT, " (%.0f %%)", 100 * weights[i]));
            }
        }
        if (choices.size() > 1) {
            return "the night does not fit together; either " + String.join(", or ", choices);
        }
        Candidate likeliest = live.get(0);
        return likeliest.mistake().orElse(null) instanceof Mistake.TurnMistaken turn
                ? turned(turn)
                : "the sightings do not fit together, but would if " + likeliest.words() + "; correct that first";
    }

    private static String turned(Mistake.TurnMistaken mistake) {
        return "what was seen since does not fit the turns of #" + mistake.seq() + ", but would if " + mistake.words();
    }
}
