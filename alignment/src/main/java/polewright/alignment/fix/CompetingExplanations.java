package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.mount.rig.Rig;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * When a night does not fit as it was told, which explanations are left, how likely each is, and where they together put the
 * axis. What is a hundred times less likely than the best is ruled out. A mistake is considered once the night fits a
 * hundred times better with it, and then counts for as little as it is made seldom.
 *
 * @param best the night as it was told, with what does not fit set aside
 * @param live those that have not been ruled out, the likeliest first; never empty
 * @param others more of them, which only tell whether a sighting that is set aside is wrong
 */
record CompetingExplanations(Interpretation best, List<Candidate> live, List<Candidate> others) {
    private static final int MOST_NAMED = 3;
    private static final double WORTH_NAMING = 0.05;
    private static final double WORTH_DOUBTING = 0.2;
    // Odds of a hundred to one.
    private static final double ACCUSED = 0.99;

    /**
     * The explanations of a night.
     *
     * @param learned the rig with its screws going as the night shows
     * @param asTold the night as told, with what does not fit set aside
     */
    static CompetingExplanations of(
            CondensedPast past, Weather weather, Rig learned, List<Step> steps, Interpretation asTold) {
        MistakeSearch search = MistakeSearch.in(past, weather, learned, steps, asTold);
        return new CompetingExplanations(asTold, search.found(), search.others());
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
    Interpretation likeliest() {
        Candidate first = live.get(0);
        return first.mistake().isPresent() && weights(live)[0] > 0.5 ? first.account() : best;
    }

    /** Whether a sighting is wrong with odds of a hundred to one, all explanations considered. */
    boolean accuses(long sighting) {
        List<Candidate> all = new ArrayList<>(live);
        all.addAll(others);
        all.sort(Comparator.comparingDouble(Candidate::cost));
        double[] weights = weights(all);
        double wrong = 0;
        for (int i = 0; i < weights.length; i++) {
            wrong += all.get(i).blames(sighting) ? weights[i] : 0;
        }
        return wrong > ACCUSED;
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
        Candidate likeliest = live.get(0);
        if (likeliest.mistake().isEmpty() && !best.night().settled()) {
            return Optional.of(
                    ofTheAxis("the sightings do not settle on one axis; undo the last one and take another"));
        }
        if (!isTurnInDoubt() && mistaken() < WORTH_DOUBTING) {
            return best.quarrelMatters() ? Optional.of(ofTheAxis(accusation())) : Optional.empty();
        }
        boolean isOver = elsewhere(likeliest) < WORTH_NAMING && !likeliest.isOfEverything();
        return Optional.of(new FixSolver.Doubt(reason(), isOver ? Fix.Dispute.WHAT_HAPPENED : Fix.Dispute.THE_AXIS));
    }

    /** Probability that the axis is now in another place than by this one. */
    private double elsewhere(Candidate one) {
        double[] weights = weights(live);
        double elsewhere = 0;
        for (int i = 0; i < weights.length; i++) {
            elsewhere += live.get(i).differsNowFrom(one) ? weights[i] : 0;
        }
        return elsewhere;
    }

    private static FixSolver.Doubt ofTheAxis(String reason) {
        return FixSolver.Doubt.ofTheAxis(reason);
    }

    private boolean isTurnInDoubt() {
        return live.stream().anyMatch(Candidate::isOfATurn);
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

    private String accusation() {
        return "sightings " + Candidate.numbers(best.accusedAlike())
                + " contradict each other, and nothing says which is right; one more, best of another kind, decides";
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
