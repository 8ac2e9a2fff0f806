package polewright.alignment.fix;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import polewright.mount.Odds;
import polewright.sky.place.Site;

/**
 * One way to explain the night.
 *
 * @param mistake what was entered wrongly by it; nothing if everything is as entered
 * @param cost in units of χ²; the less, the likelier
 */
record Candidate(Optional<Mistake> mistake, Interpretation account, double cost) {
    // Most mistakes are among those that can be named: odds of ten to one (common practice).
    static final double NAMELESS = Odds.TEN_TO_ONE;

    /** Everything as entered; what is set aside is wrong for no reason that can be named. */
    static Candidate asTold(Interpretation account) {
        return new Candidate(Optional.empty(), account, cost(account));
    }

    /**
     * Something entered wrongly.
     *
     * @param surcharge for how seldom that happens
     */
    static Candidate of(Mistake mistake, Interpretation account, double surcharge) {
        return new Candidate(Optional.of(mistake), account, cost(account) + surcharge);
    }

    /** Several that are much the same to a person, as the likeliest of them, which comes first; as likely as all of them. */
    static Candidate together(List<Candidate> alike) {
        Candidate first = alike.get(0);
        double likelihood = alike.stream()
                .mapToDouble(other -> Math.exp((first.cost - other.cost) / 2))
                .sum();
        return new Candidate(first.mistake, first.account, first.cost - 2 * Math.log(likelihood));
    }

    /** Of the night so told, with what is set aside wrong for no reason that can be named. */
    static double cost(Interpretation account) {
        return account.cost() + NAMELESS * account.setAside().size();
    }

    boolean isOfThisSite(Site site) {
        return account.night().last().site().equals(site);
    }

    /** Whether what the sightings say cannot be used before the mistake is corrected. */
    boolean isOfEverything() {
        return mistake.filter(m -> m instanceof Mistake.ClockWrong || m instanceof Mistake.SiteWrong)
                .isPresent();
    }

    boolean isOfATurn() {
        return mistake.filter(Mistake.TurnMistaken.class::isInstance).isPresent();
    }

    /** Whether it holds this sighting for wrong, with or without a reason. */
    boolean blames(long sighting) {
        return account.setAside().contains(sighting)
                || mistake.filter(made -> isMisreadIn(made, sighting)).isPresent();
    }

    private static boolean isMisreadIn(Mistake made, long sighting) {
        if (made instanceof Mistake.HabitualMistake habit) {
            return habit.misread().stream().anyMatch(misread -> misread.seq() == sighting);
        }
        return made instanceof Mistake.SightingMisread misread && misread.seq() == sighting;
    }

    /** Whether the axis is now elsewhere by another. */
    boolean differsNowFrom(Candidate other) {
        AxisState here = account.night().last();
        AxisState there = other.account.night().last();
        return !here.site().equals(there.site()) || account.differsNowFrom(other.account);
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
