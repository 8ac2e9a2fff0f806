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
 * The explanations that remain possible for a night, with their probabilities and the axis that they imply together. An
 * explanation 100 times less likely than the best is ruled out. A mistake is considered once the night fits 100 times
 * better with it; its prior probability then counts too.
 *
 * @param best the night as entered, with outliers set aside
 * @param live those not ruled out, the most likely first; never empty
 * @param others further explanations, used only to judge whether a sighting that is set aside is wrong
 */
record CompetingExplanations(Interpretation best, List<Candidate> live, List<Candidate> others) {
    private static final int MOST_NAMED = 3;
    private static final double WORTH_NAMING = 0.05;
    private static final double WORTH_DOUBTING = 0.2;
    // Odds of 100 to 1.
    private static final double ACCUSED = 0.99;

    /**
     * The explanations of a night.
     *
     * @param learned the rig with the screw directions that the night has shown
     * @param asEntered the night as entered, with outliers set aside
     */
    static CompetingExplanations of(
            CondensedPast past, Weather weather, Rig learned, List<Step> steps, Interpretation asEntered) {
        MistakeSearch search = MistakeSearch.in(past, weather, learned, steps, asEntered);
        return new CompetingExplanations(asEntered, search.found(), search.others());
    }

    List<Explanation> explanations() {
        double[] weights = weights(live);
        List<Explanation> all = new ArrayList<>();
        for (int i = 0; i < weights.length; i++) {
            Candidate candidate = live.get(i);
            all.add(new Explanation(
                    candidate.mistake(),
                    candidate.interpretation().setAside(),
                    weights[i],
                    candidate.interpretation().night().last()));
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

    /**
     * The axis and the screws averaged over all live explanations, so that the covariance covers every possible place.
     */
    AxisState state() {
        boolean isAsEntered = live.stream().allMatch(c -> c.mistake().isEmpty());
        if (isAsEntered && !best.conflictMatters()) {
            return best.night().last();
        }
        Site site = best.night().last().site();
        List<Candidate> here = live.stream().filter(c -> c.isAtSite(site)).toList();
        return here.isEmpty()
                ? best.night().last()
                : AxisState.mixture(
                        here.stream()
                                .map(c -> c.interpretation().night().last())
                                .toList(),
                        weights(here));
    }

    /**
     * The interpretation of the explanation with more than half the probability; the night as entered if there is none.
     */
    Interpretation mostLikely() {
        Candidate first = live.get(0);
        return first.mistake().isPresent() && weights(live)[0] > 0.5 ? first.interpretation() : best;
    }

    /** Whether a sighting is wrong with odds of at least 100 to 1, over all explanations. */
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
     * The screw senses, less certain when a turn may have gone the other way. One turn cannot show whether the hand
     * slipped once or the screw is always reversed.
     */
    ScrewSenses doubted(ScrewSenses senses, List<Step> steps) {
        double azimuth = 0;
        double altitude = 0;
        double[] weights = weights(live);
        for (int i = 0; i < weights.length; i++) {
            if (live.get(i).mistake().orElse(null) instanceof Mistake.TurnMistaken mistaken
                    && mistaken.meant() instanceof Step.Turned meant) {
                Step.Turned entered = enteredTurn(steps, mistaken.seq());
                azimuth += isReversed(entered.azimuthTurns(), meant.azimuthTurns()) ? weights[i] : 0;
                altitude += isReversed(entered.altitudeTurns(), meant.altitudeTurns()) ? weights[i] : 0;
            }
        }
        return new ScrewSenses(
                Math.min(senses.azimuth(), 1 - azimuth / 2),
                Math.min(senses.altitude(), 1 - altitude / 2),
                senses.azimuthTried() || azimuth > 0,
                senses.altitudeTried() || altitude > 0,
                senses.otherPlaces());
    }

    private static Step.Turned enteredTurn(List<Step> steps, long seq) {
        return steps.stream()
                .filter(step -> step.seq() == seq)
                .filter(Step.Turned.class::isInstance)
                .map(Step.Turned.class::cast)
                .findFirst()
                .orElseThrow();
    }

    private static boolean isReversed(double entered, double meant) {
        return entered * meant < 0;
    }

    /** Why the outcome is dubious, and about what; empty when the remaining doubt does not matter. */
    Optional<FixSolver.Doubt> doubt() {
        Candidate mostLikely = live.get(0);
        if (mostLikely.mistake().isEmpty() && !best.night().converged()) {
            return Optional.of(
                    ofTheAxis("the sightings do not settle on one axis; undo the last one and take another"));
        }
        if (!isTurnInDoubt() && mistaken() < WORTH_DOUBTING) {
            return best.conflictMatters() ? Optional.of(ofTheAxis(accusation())) : Optional.empty();
        }
        boolean isOver = elsewhere(mostLikely) < WORTH_NAMING && !mostLikely.affectsEverySighting();
        return Optional.of(new FixSolver.Doubt(reason(), isOver ? Fix.Dispute.WHAT_HAPPENED : Fix.Dispute.THE_AXIS));
    }

    /** Probability that the axis is not where this explanation puts it now. */
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
        return live.stream().anyMatch(Candidate::concernsTurn);
    }

    /** Probability that something other than an unused sighting was entered wrongly. */
    private double mistaken() {
        double[] weights = weights(live);
        double mistaken = 0;
        for (int i = 0; i < weights.length; i++) {
            mistaken += live.get(i).mistake().isPresent() ? weights[i] : 0;
        }
        return mistaken;
    }

    private String accusation() {
        return "sightings " + Candidate.numbers(best.inConflict())
                + " contradict each other, and neither is more likely to be right; one more sighting, of another kind,"
                + " will decide";
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
            return "the entries of the night contradict each other; either " + String.join(", or ", choices);
        }
        Candidate mostLikely = live.get(0);
        return mostLikely.mistake().orElse(null) instanceof Mistake.TurnMistaken turn
                ? turned(turn)
                : "the sightings do not fit together, but would if " + mostLikely.words() + "; correct that first";
    }

    private static String turned(Mistake.TurnMistaken mistake) {
        return "what was seen since does not fit the turns of #" + mistake.seq() + ", but would if " + mistake.words();
    }
}
