package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The fix as a pure function of the night's steps.
 *
 * <p>{@link Contradictions} decides which sightings to believe, {@link DoubtedScrews} whether to doubt the rig rather than
 * them, {@link CompetingExplanations} whether something else is to blame instead; this class puts the outcome together.
 */
public final class FixSolver {
    private static final int MOST_ROUNDS_OF_SCATTER = 3;
    private static final double UNKNOWN_FRACTION_OF_PRIOR = 0.5;

    private final CondensedPast past;
    private final Site site;
    private final Rig rig;
    private final Weather weather;
    private final Alternatives alternatives;

    FixSolver(CondensedPast past, Weather weather) {
        this(past, weather, new Alternatives(past.site(), weather));
    }

    /** A solver after this past, which need not work out again what sightings may have been instead. */
    FixSolver(CondensedPast past, Weather weather, Alternatives alternatives) {
        this.past = past;
        this.site = past.site();
        this.rig = past.rig();
        this.weather = weather;
        this.alternatives = alternatives;
    }

    /**
     * The fix of a night.
     *
     * @param weather for working out a contradictory sighting's likely cause; the steps already hold their own models
     * @param steps in the order in which they happened
     */
    public static Fix solve(Site site, Rig rig, Weather weather, List<Step> steps) {
        return new GrowingFix(site, rig, weather).with(steps).fix();
    }

    /**
     * What a night tells of the mount, for later nights; nothing if it is in doubt how to tell it.
     *
     * @param rig the rig without experience: what earlier nights taught would be counted again
     */
    public static Optional<MountCalibration> hindsight(Site site, Rig rig, Weather weather, List<Step> steps) {
        return new GrowingFix(site, rig, weather).with(steps).hindsight();
    }

    /**
     * A night that was solved.
     *
     * @param steps those since the past
     * @param firstGuess how they looked at first
     * @param account the explanation of them that was chosen
     */
    record Outcome(CondensedPast past, List<Step> steps, ForwardPass firstGuess, Interpretation account, Fix fix) {
        Optional<MountCalibration> hindsight() {
            return fix instanceof Fix.Dubious
                    ? Optional.empty()
                    : Optional.of(MountCalibration.of(past, account.smoother(), account.night(), fix));
        }

        private NightScatter scatterAfter(Set<Long> condensed) {
            int figures = account.smoother()
                    .figuresByEye(
                            s -> condensed.contains(s) && !account.setAside().contains(s));
            return new NightScatter(account.smoother().scatter(), past.scatter().weight() + figures);
        }

        /** The past with the first of these steps condensed into it; those that follow tell what of them to believe. */
        CondensedPast condensing(int first) {
            List<Step> more = steps.subList(0, first);
            Set<Long> condensed = more.stream().map(Step::seq).collect(Collectors.toSet());
            return new CondensedPast(
                    past.site(),
                    fix.rig(),
                    fix.senses(),
                    scatterAfter(condensed),
                    Optional.of(account.smoother().after(first, account.night(), account.setAside())),
                    fix.agreements().stream()
                            .limit(past.agreements().size()
                                    + more.stream()
                                            .filter(Step.Sighted.class::isInstance)
                                            .count())
                            .toList(),
                    joined(past.shifts(), account.night().shifts(step -> condensed.contains(step.seq()))));
        }
    }

    /** The screws, and the night as it was told, by readings that scatter as far as tonight's do. */
    private record Read(CondensedPast past, SensesLearned screws) {}

    private Read read(List<Step> steps, NightSmoother smoother, ForwardPass firstGuess) {
        Read read = read(past, steps, Contradictions.weigh(smoother, firstGuess));
        for (int round = 0; round < MOST_ROUNDS_OF_SCATTER; round++) {
            NightScatter learned = past.scatter().learnedFrom(read.screws().account());
            double before = read.past().scatter().factor();
            // At first less, too, than far back in the night; then only what comes back as it grows is of interest.
            if (round == 0 ? learned.factor() == before : learned.factor() <= before) {
                break;
            }
            // What was beyond chance with errors as stated may not be so now: it is asked again of every sighting.
            CondensedPast scattering = past.scattering(learned);
            read = read(scattering, steps, Contradictions.weigh(new NightSmoother(scattering, steps)));
        }
        return read;
    }

    private static Read read(CondensedPast past, List<Step> steps, Interpretation asTold) {
        return new Read(past, SensesLearned.considered(past, steps, UnknownDriftNorth.considered(past, steps, asTold)));
    }

    private static <T> List<T> joined(List<T> some, List<T> more) {
        List<T> all = new ArrayList<>(some.size() + more.size());
        all.addAll(some);
        all.addAll(more);
        return Collections.unmodifiableList(all);
    }

    /** Solves what came after the past. */
    Outcome solve(List<Step> steps) {
        NightSmoother smoother = new NightSmoother(past, steps);
        return solve(steps, smoother, smoother.firstGuess());
    }

    /** The same; it saves work to be given the outcome of fewer steps after the same past. */
    Outcome solve(List<Step> steps, Outcome shorter) {
        NightSmoother smoother = new NightSmoother(past, steps);
        return solve(steps, smoother, smoother.firstGuess(shorter.firstGuess()));
    }

    private Outcome solve(List<Step> steps, NightSmoother smoother, ForwardPass firstGuess) {
        Read read = read(steps, smoother, firstGuess);
        SensesLearned screws = read.screws();
        Interpretation account =
                DoubtedScrews.considered(screws.account().smoother().rig(), steps, screws.account());
        Rig learned = learned(account);
        CompetingExplanations competing = CompetingExplanations.of(read.past(), weather, learned, steps, account);
        ScrewSenses senses = competing.doubted(screws.senses(), steps);
        Interpretation likeliest = competing.likeliest();
        List<Agreement> agreements = joined(
                past.agreements(),
                likeliest.sightings().stream()
                        .map(s -> agreement(likeliest, s, competing))
                        .toList());
        List<Explanation> explanations = competing.explanations();
        AxisState state = competing.state();
        Fix fix = competing
                .doubt()
                .<Fix>map(doubt -> new Fix.Dubious(
                        state,
                        learned,
                        senses,
                        read.past().scatter().factor(),
                        agreements,
                        explanations,
                        doubt.reason(),
                        doubt.about()))
                .or(() -> missing(state)
                        .map(missing -> new Fix.Underdetermined(
                                state,
                                learned,
                                senses,
                                read.past().scatter().factor(),
                                agreements,
                                explanations,
                                missing)))
                .orElseGet(() -> new Fix.Solved(
                        state, learned, senses, read.past().scatter().factor(), agreements, explanations));
        return new Outcome(past, steps, firstGuess, account, fix);
    }

    /** The rig as it was told, with its screws going as the night shows. */
    private Rig learned(Interpretation account) {
        Rig byAccount = account.smoother().rig();
        return rig.withScrews(
                alike(rig.azimuthScrew(), byAccount.azimuthScrew()),
                alike(rig.altitudeScrew(), byAccount.altitudeScrew()),
                rig.levelSigma());
    }

    private static Screw alike(Screw told, Screw learned) {
        return told.clockwise() == learned.clockwise() ? told : told.reversed();
    }

    /** Why the outcome is dubious, and about what. */
    record Doubt(String reason, Fix.Dispute about) {
        static Doubt ofTheAxis(String reason) {
            return new Doubt(reason, Fix.Dispute.THE_AXIS);
        }
    }

    private Agreement agreement(Interpretation account, Step.Sighted sighted, CompetingExplanations competing) {
        boolean contradictory = account.setAside().contains(sighted.seq());
        Interpretation others = account.accusedAlike().contains(sighted.seq())
                ? account.settingAside(allBut(sighted, account))
                : account;
        return new Agreement(
                sighted.seq(),
                sighted.sighting().getClass(),
                sighted.sighting().kind(),
                others.innovation(sighted),
                sighted.model().size(),
                contradictory,
                contradictory && competing.accuses(sighted.seq()),
                others.line(sighted).eastShare(site.latitude().cos()),
                contradictory ? LikelyCause.of(others, sighted, alternatives) : Optional.empty());
    }

    /** Who must be set aside to see how one of the accused stands against those who accuse it. */
    private static Set<Long> allBut(Step.Sighted accused, Interpretation account) {
        Set<Long> without = new HashSet<>(account.setAside());
        without.removeAll(account.accusedAlike());
        without.add(accused.seq());
        return without;
    }

    private static Optional<String> missing(AxisState state) {
        OffsetCovariance covariance = state.offsetCovariance();
        double unknown = UNKNOWN_FRACTION_OF_PRIOR * AxisState.PRIOR_SIGMA.radians();
        boolean noEast = covariance.sigmaEast().radians() > unknown;
        boolean noUp = covariance.sigmaUp().radians() > unknown;
        if (noEast && noUp) {
            return Optional.of("it is not known yet where the axis points");
        }
        if (noEast) {
            return Optional.of("it is not known yet how far east or west the axis points");
        }
        if (noUp) {
            return Optional.of("it is not known yet how high the axis points");
        }
        return Optional.empty();
    }
}
