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
 * <p>{@link Contradictions} decides which sightings to believe, {@link DoubtedScrews} whether to doubt the rig instead,
 * and {@link CompetingExplanations} whether something else was entered wrongly. This class assembles the result.
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

    /** A solver for the steps after this past that shares a cache of alternative readings. */
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
     * @param weather used to find the likely cause of a contradictory sighting; the steps already hold their own models
     * @param steps in order of time
     */
    public static Fix solve(Site site, Rig rig, Weather weather, List<Step> steps) {
        return new GrowingFix(site, rig, weather).with(steps).fix();
    }

    /**
     * What a night shows about the mount, for use on later nights; empty if the night is dubious.
     *
     * @param rig the rig without experience, so that earlier nights are not counted twice
     */
    public static Optional<MountCalibration> calibration(Site site, Rig rig, Weather weather, List<Step> steps) {
        return new GrowingFix(site, rig, weather).with(steps).calibration();
    }

    /**
     * A solved night.
     *
     * @param steps those since the past
     * @param firstGuess the first forward pass over them
     * @param interpretation the one that was chosen
     */
    record Outcome(
            CondensedPast past, List<Step> steps, ForwardPass firstGuess, Interpretation interpretation, Fix fix) {
        Optional<MountCalibration> calibration() {
            return fix instanceof Fix.Dubious
                    ? Optional.empty()
                    : Optional.of(MountCalibration.of(past, interpretation.smoother(), interpretation.night(), fix));
        }

        /**
         * The factor of the whole solution, with the weight of the condensed readings. So the readings that are still
         * live have some weight twice. An update by the condensed readings alone was tried: where the factor is just
         * under its threshold, the solution then changed by 15 % of a sigma when steps were condensed.
         */
        private NightScatter scatterAfter(Set<Long> condensed) {
            int figures = interpretation
                    .smoother()
                    .figuresByEye(s ->
                            condensed.contains(s) && !interpretation.setAside().contains(s));
            return new NightScatter(
                    interpretation.smoother().scatter(), past.scatter().weight() + figures);
        }

        /**
         * The past extended by the first of these steps; the later steps have decided which of their sightings to
         * believe.
         */
        CondensedPast condensing(int first) {
            List<Step> more = steps.subList(0, first);
            Set<Long> condensed = more.stream().map(Step::seq).collect(Collectors.toSet());
            return new CondensedPast(
                    past.site(),
                    fix.rig(),
                    fix.senses(),
                    scatterAfter(condensed),
                    Optional.of(
                            interpretation.smoother().after(first, interpretation.night(), interpretation.setAside())),
                    fix.agreements().stream()
                            .limit(past.agreements().size()
                                    + more.stream()
                                            .filter(Step.Sighted.class::isInstance)
                                            .count())
                            .toList(),
                    joined(past.shifts(), interpretation.night().shifts(step -> condensed.contains(step.seq()))));
        }
    }

    /** The screws and the night as entered, with tonight's scatter of the readings. */
    private record Read(CondensedPast past, SensesLearned screws) {}

    private Read read(List<Step> steps, NightSmoother smoother, ForwardPass firstGuess) {
        Read read = read(past, steps, Contradictions.weigh(smoother, firstGuess));
        for (int round = 0; round < MOST_ROUNDS_OF_SCATTER; round++) {
            NightScatter learned = past.scatter().learnedFrom(read.screws().interpretation());
            double before = read.past().scatter().factor();
            // The first round may also lower the factor carried over from the past. Later rounds only let sightings
            // come back as it grows.
            if (round == 0 ? learned.factor() == before : learned.factor() <= before) {
                break;
            }
            // An outlier with the stated errors may no longer be one, so every sighting is judged again.
            CondensedPast scattering = past.scattering(learned);
            read = read(scattering, steps, Contradictions.weigh(new NightSmoother(scattering, steps)));
        }
        return read;
    }

    private static Read read(CondensedPast past, List<Step> steps, Interpretation asEntered) {
        return new Read(
                past, SensesLearned.considered(past, steps, UnknownDriftNorth.considered(past, steps, asEntered)));
    }

    private static <T> List<T> joined(List<T> some, List<T> more) {
        List<T> all = new ArrayList<>(some.size() + more.size());
        all.addAll(some);
        all.addAll(more);
        return Collections.unmodifiableList(all);
    }

    /** Solves the steps after the past. */
    Outcome solve(List<Step> steps) {
        NightSmoother smoother = new NightSmoother(past, steps);
        return solve(steps, smoother, smoother.firstGuess());
    }

    /** The same, reusing the outcome for fewer steps after the same past. */
    Outcome solve(List<Step> steps, Outcome shorter) {
        NightSmoother smoother = new NightSmoother(past, steps);
        return solve(steps, smoother, smoother.firstGuess(shorter.firstGuess()));
    }

    private Outcome solve(List<Step> steps, NightSmoother smoother, ForwardPass firstGuess) {
        Read read = read(steps, smoother, firstGuess);
        SensesLearned screws = read.screws();
        Interpretation interpretation =
                DoubtedScrews.considered(screws.interpretation().smoother().rig(), steps, screws.interpretation());
        Rig learned = learned(interpretation);
        CompetingExplanations competing =
                CompetingExplanations.of(read.past(), weather, learned, steps, interpretation);
        ScrewSenses senses = competing.doubted(screws.senses(), steps);
        Interpretation mostLikely = competing.mostLikely();
        List<Agreement> agreements = joined(
                past.agreements(),
                mostLikely.sightings().stream()
                        .map(s -> agreement(mostLikely, s, competing))
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
        return new Outcome(past, steps, firstGuess, interpretation, fix);
    }

    /** The rig as described, with the screw directions that the night has shown. */
    private Rig learned(Interpretation interpretation) {
        Rig byInterpretation = interpretation.smoother().rig();
        return rig.withScrews(
                alike(rig.azimuthScrew(), byInterpretation.azimuthScrew()),
                alike(rig.altitudeScrew(), byInterpretation.altitudeScrew()),
                rig.levelSigma());
    }

    private static Screw alike(Screw described, Screw learned) {
        return described.clockwise() == learned.clockwise() ? described : described.reversed();
    }

    /** Why the outcome is dubious, and about what. */
    record Doubt(String reason, Fix.Dispute about) {
        static Doubt ofTheAxis(String reason) {
            return new Doubt(reason, Fix.Dispute.THE_AXIS);
        }
    }

    private Agreement agreement(Interpretation interpretation, Step.Sighted sighted, CompetingExplanations competing) {
        boolean contradictory = interpretation.setAside().contains(sighted.seq());
        Interpretation others = interpretation.inConflict().contains(sighted.seq())
                ? interpretation.settingAside(allBut(sighted, interpretation))
                : interpretation;
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

    /** The sightings to set aside to compare one of the conflicting sightings with the others. */
    private static Set<Long> allBut(Step.Sighted accused, Interpretation interpretation) {
        Set<Long> without = new HashSet<>(interpretation.setAside());
        without.removeAll(interpretation.inConflict());
        without.add(accused.seq());
        return without;
    }

    private static Optional<String> missing(AxisState state) {
        OffsetCovariance covariance = state.offsetCovariance();
        double unknown = UNKNOWN_FRACTION_OF_PRIOR * AxisState.PRIOR_SIGMA.radians();
        boolean noEast = covariance.sigmaEast().radians() > unknown;
        boolean noUp = covariance.sigmaUp().radians() > unknown;
        if (noEast && noUp) {
            return Optional.of("no fix yet");
        }
        if (noEast) {
            return Optional.of("how far east or west the axis points has not been measured yet");
        }
        if (noUp) {
            return Optional.of("how high the axis points has not been measured yet");
        }
        return Optional.empty();
    }
}
