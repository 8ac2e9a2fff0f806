package polewright.alignment.fix;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import polewright.mount.EvidenceThreshold;
import polewright.sky.place.Site;

/**
 * One hypothesis that may explain the night.
 *
 * @param mistake the assumed entry mistake; empty if everything is as entered
 * @param cost in units of χ²; lower is more likely
 */
record Candidate(Optional<Mistake> mistake, Interpretation interpretation, double cost) {
    // Most mistakes are of a kind that can be named: odds of 10 to 1 (common practice).
    static final double NAMELESS = EvidenceThreshold.TEN_TO_ONE;

    /** Everything as entered; each sighting that is set aside is wrong for an unknown reason. */
    static Candidate asEntered(Interpretation interpretation) {
        return new Candidate(Optional.empty(), interpretation, cost(interpretation));
    }

    /**
     * One entry is wrong.
     *
     * @param surcharge prior cost of the mistake
     */
    static Candidate of(Mistake mistake, Interpretation interpretation, double surcharge) {
        return new Candidate(Optional.of(mistake), interpretation, cost(interpretation) + surcharge);
    }

    /**
     * Merges hypotheses that are the same for the observer into the most likely one, with the probability of all.
     *
     * @param alike the most likely first
     */
    static Candidate together(List<Candidate> alike) {
        Candidate first = alike.get(0);
        double likelihood = alike.stream()
                .mapToDouble(other -> Math.exp((first.cost - other.cost) / 2))
                .sum();
        return new Candidate(first.mistake, first.interpretation, first.cost - 2 * Math.log(likelihood));
    }

    /** Cost of an interpretation, with each sighting that is set aside wrong for an unknown reason. */
    static double cost(Interpretation interpretation) {
        return interpretation.cost() + NAMELESS * interpretation.setAside().size();
    }

    boolean isAtSite(Site site) {
        return interpretation.night().last().site().equals(site);
    }

    /** Whether the mistake affects every sighting, so that none can be used before it is corrected. */
    boolean affectsEverySighting() {
        return mistake.filter(Mistake::affectsEverySighting).isPresent();
    }

    boolean concernsTurn() {
        return mistake.filter(Mistake.TurnMistaken.class::isInstance).isPresent();
    }

    /** Whether this sighting is wrong under the hypothesis, for a known reason or not. */
    boolean blames(long sighting) {
        return interpretation.setAside().contains(sighting)
                || mistake.filter(made -> made.isMisreadingOf(sighting)).isPresent();
    }

    /** Whether another hypothesis puts the axis in a different place now. */
    boolean differsNowFrom(Candidate other) {
        AxisState here = interpretation.night().last();
        AxisState there = other.interpretation.night().last();
        return !here.site().equals(there.site()) || interpretation.differsNowFrom(other.interpretation);
    }

    String words() {
        return mistake.map(Mistake::wordsInNight).orElseGet(() -> notUsed(interpretation.setAside()));
    }

    private static String notUsed(Collection<Long> sightings) {
        if (sightings.isEmpty()) {
            return "everything is as entered";
        }
        return (sightings.size() == 1 ? "sighting " : "sightings ")
                + numbers(sightings)
                + (sightings.size() == 1 ? " is wrong" : " are wrong");
    }

    /** {@code #3 and #5}. */
    static String numbers(Collection<Long> sightings) {
        return new TreeSet<>(sightings).stream().map(s -> "#" + s).collect(Collectors.joining(" and "));
    }
}
