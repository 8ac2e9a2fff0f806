package polewright.axis.fix;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import polewright.axis.OffsetCovariance;
import polewright.axis.rig.Rig;
import polewright.axis.sighting.Misreading;
import polewright.sky.InputRefused;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * The fix as a pure function of the night's steps.
 *
 * <p>Robust: a sighting is either as good as it says or simply wrong. Those are set aside whose removal takes more off
 * the night's χ² than chance allows once in a thousand, one at a time, the worst first; one that fits after all when
 * others are gone comes back. Of two that contradict each other with nothing to judge between them, neither is believed.
 */
public final class FixSolver {
    // Chi-squared points that chance exceeds once in a thousand, for one and two figures (handbook tables).
    private static final double[] ONCE_IN_A_THOUSAND = {0, 10.828, 13.816};
    // Points that chance exceeds once in twenty: an explanation must fit at least so well.
    private static final double[] ONCE_IN_TWENTY = {0, 3.841, 5.991};
    private static final double EXPLAINS_AWAY = 0.25;
    // Two sightings accuse each other unless the night's χ² without the one, against that without the other, says with
    // odds of a hundred to one which is wrong.
    private static final double HUNDRED_TO_ONE = 2 * Math.log(100);
    // Two places of the axis within one sigma of each other are the same for anybody who turns screws.
    private static final double MATTERS_SQUARED_SIGMAS = 1;
    private static final double UNKNOWN_FRACTION_OF_PRIOR = 0.5;

    private final Site site;
    private final Rig rig;
    private final Weather weather;

    private FixSolver(Site site, Rig rig, Weather weather) {
        this.site = site;
        this.rig = rig;
        this.weather = weather;
    }

    /**
     * The fix of a night.
     *
     * @param weather for working out a contradictory sighting's likely cause; the steps already hold their own models
     * @param steps in the order in which they happened
     */
    public static Fix solve(Site site, Rig rig, Weather weather, List<Step> steps) {
        return new FixSolver(site, rig, weather).solve(steps);
    }

    private Fix solve(List<Step> steps) {
        List<Step.Sighted> sightings = steps.stream()
                .filter(Step.Sighted.class::isInstance)
                .map(Step.Sighted.class::cast)
                .toList();
        NightSmoother smoother = new NightSmoother(site, rig, steps);
        Set<Long> setAside = new HashSet<>();
        Set<Long> accusedAlike = new TreeSet<>();
        NightSmoother.Smoothed night = smoother.solve(setAside);
        for (int round = 0; round < sightings.size(); round++) {
            Optional<Step.Sighted> worst = worst(night, sightings, setAside, accusedAlike);
            if (worst.isEmpty()) {
                break;
            }
            setAside.add(worst.get().seq());
            night = smoother.solve(setAside);
        }
        for (Step.Sighted sighted : sightings) {
            if (setAside.contains(sighted.seq()) && innovation(night, sighted, true) <= limit(sighted)) {
                setAside.remove(sighted.seq());
                night = smoother.solve(setAside);
            }
        }
        if (accusedAlike.stream().noneMatch(setAside::contains)) {
            accusedAlike.clear();
        } else if (setAside.addAll(accusedAlike)) {
            // Believing the one would be a guess.
            night = smoother.solve(setAside);
        }
        return outcome(smoother, night, sightings, setAside, accusedAlike);
    }

    /** The sighting to set aside next, if any. Fills {@code accusedAlike} when two could not be told apart. */
    private static Optional<Step.Sighted> worst(
            NightSmoother.Smoothed night, List<Step.Sighted> sightings, Set<Long> setAside, Set<Long> accusedAlike) {
        List<Step.Sighted> suspects = new ArrayList<>();
        double most = 0;
        for (Step.Sighted sighted : sightings) {
            if (!setAside.contains(sighted.seq())) {
                double excess = innovation(night, sighted, false) - limit(sighted);
                if (excess > 0) {
                    suspects.add(sighted);
                    most = Math.max(most, excess);
                }
            }
        }
        Step.Sighted chosen = null;
        int alike = 0;
        for (Step.Sighted sighted : suspects) {
            double excess = innovation(night, sighted, false) - limit(sighted);
            if (excess > most - HUNDRED_TO_ONE) {
                // The newer of two that accuse each other: the older one has at least been acted upon.
                chosen = sighted;
                alike++;
            }
        }
        if (alike > 1) {
            double threshold = most - HUNDRED_TO_ONE;
            suspects.stream()
                    .filter(s -> innovation(night, s, false) - limit(s) > threshold)
                    .forEach(s -> accusedAlike.add(s.seq()));
        }
        return Optional.ofNullable(chosen);
    }

    private Fix outcome(
            NightSmoother smoother,
            NightSmoother.Smoothed night,
            List<Step.Sighted> sightings,
            Set<Long> setAside,
            Set<Long> accusedAlike) {
        List<Agreement> agreements = new ArrayList<>();
        for (Step.Sighted sighted : sightings) {
            boolean contradictory = setAside.contains(sighted.seq());
            NightSmoother.Smoothed others = accusedAlike.contains(sighted.seq())
                    ? smoother.solve(believingAllBut(sighted, setAside, accusedAlike))
                    : night;
            agreements.add(new Agreement(
                    sighted.seq(),
                    sighted.sighting().kind(),
                    innovation(others, sighted, contradictory),
                    sighted.model().size(),
                    contradictory,
                    contradictory ? likelyCause(others, sighted) : Optional.empty()));
        }
        AxisState state = night.last();
        List<Agreement> fixed = List.copyOf(agreements);
        if (mattersStill(smoother, setAside, accusedAlike)) {
            return new Fix.Dubious(
                    state,
                    fixed,
                    "sightings "
                            + String.join(
                                    " and ",
                                    accusedAlike.stream().map(s -> "#" + s).toList())
                            + " contradict each other, and nothing says which is right; take one of them again");
        }
        return missing(state)
                .<Fix>map(missing -> new Fix.Underdetermined(state, fixed, missing))
                .orElseGet(() -> new Fix.Solved(state, fixed));
    }

    /**
     * Whether it makes a difference to where the axis is now which of the accused is believed. Once it has been turned and
     * seen again, a quarrel about where it stood before is over.
     */
    private static boolean mattersStill(NightSmoother smoother, Set<Long> setAside, Set<Long> accusedAlike) {
        List<AxisState> believingOne = accusedAlike.stream()
                .map(seq -> {
                    Set<Long> without = new HashSet<>(setAside);
                    without.remove(seq);
                    return smoother.solve(without).last();
                })
                .toList();
        return believingOne.stream()
                .anyMatch(one -> believingOne.stream()
                        .anyMatch(other -> one.offsetCovariance()
                                        .normalisedSquare(one.offset().minus(other.offset()))
                                > MATTERS_SQUARED_SIGMAS));
    }

    /** Who must be set aside to see how one of the accused stands against those who accuse it. */
    private static Set<Long> believingAllBut(Step.Sighted accused, Set<Long> setAside, Set<Long> accusedAlike) {
        Set<Long> without = new HashSet<>(setAside);
        without.removeAll(accusedAlike);
        without.add(accused.seq());
        return without;
    }

    private static Optional<String> missing(AxisState state) {
        OffsetCovariance covariance = state.offsetCovariance();
        double unknown = UNKNOWN_FRACTION_OF_PRIOR * AxisState.PRIOR_SIGMA.radians();
        boolean noEast = covariance.sigmaEast().radians() > unknown;
        boolean noUp = covariance.sigmaUp().radians() > unknown;
        if (noEast && noUp) {
            return Optional.of("nothing tells yet where the axis points: take a compass bearing and the level");
        }
        if (noEast) {
            return Optional.of("nothing tells yet how far east or west the axis points: take a compass bearing,"
                    + " a shadow, or a star drift near the meridian");
        }
        if (noUp) {
            return Optional.of("nothing tells yet how high the axis points: read the wedge's scale on a level base,"
                    + " or watch a star drift in the east or west");
        }
        return Optional.empty();
    }

    private Optional<String> likelyCause(NightSmoother.Smoothed night, Step.Sighted sighted) {
        AxisState state = night.stateFor(sighted);
        double asRead = innovation(night, sighted, true);
        for (Misreading misreading : sighted.sighting().misreadings()) {
            double asMeant;
            try {
                asMeant = LinearisedSighting.of(misreading.meant().model(site, weather), state)
                        .squaredInnovation(state);
            } catch (InputRefused impossible) {
                // This mistake cannot have been made: the body would not have been up.
                continue;
            }
            if (asMeant < ONCE_IN_TWENTY[sighted.model().size()] && asMeant < EXPLAINS_AWAY * asRead) {
                return Optional.of(misreading.cause());
            }
        }
        return Optional.empty();
    }

    private static double innovation(NightSmoother.Smoothed night, Step.Sighted sighted, boolean leftOut) {
        AxisState state = night.stateFor(sighted);
        LinearisedSighting line = LinearisedSighting.of(sighted.model(), state);
        return leftOut ? line.squaredInnovation(state) : line.squaredInnovationWithout(state);
    }

    private static double limit(Step.Sighted sighted) {
        return ONCE_IN_A_THOUSAND[sighted.model().size()];
    }
}
