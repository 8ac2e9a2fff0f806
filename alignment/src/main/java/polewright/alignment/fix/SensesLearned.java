package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import polewright.mount.rig.Rig;

/**
 * Learns the directions of the screws from the turns of the night. If a direction is only assumed, both are equally
 * likely, or as likely as earlier nights have shown. A rig described by its owner is seldom wrong about it, so
 * overruling it takes two turns and stronger evidence.
 *
 * @param interpretation the night with the most likely screw directions
 * @param senses how certain they are
 */
record SensesLearned(Interpretation interpretation, ScrewSenses senses) {
    private static final double COST_OF_OVERRULING = 2 * Contradictions.HUNDRED_TO_ONE;
    private static final int TURNS_TO_OVERRULE = 2;
    // At this cost difference the weight is negligible: odds of a million to 1.
    private static final double NO_WEIGHT = 2 * Math.log(1e6);

    /** The night with each screw going in its more likely direction. */
    static SensesLearned considered(CondensedPast past, List<Step> steps, Interpretation asEntered) {
        ScrewSenses before = past.senses();
        boolean azimuth = isOpen(past, before.azimuth()) && turned(steps, true, 1);
        boolean altitude = isOpen(past, before.altitude()) && turned(steps, false, 1);
        SensesLearned asAssumed = azimuth || altitude
                ? weighed(before, asEntered, azimuth, altitude)
                : new SensesLearned(asEntered, before);
        return overrulingDescribedRig(past, steps, asAssumed);
    }

    /**
     * Whether a direction is still open. One that the condensed part of the night has shown is final once it is known.
     */
    private static boolean isOpen(CondensedPast past, double sense) {
        return sense < (past.left().isEmpty() ? 1 : ScrewSenses.KNOWN);
    }

    /**
     * One combination of screw directions.
     *
     * @param azimuth whether the azimuth screw is reversed relative to the rig
     * @param altitude whether the altitude screw is reversed relative to the rig
     * @param cost of the night with it, including the prior, in units of χ²
     */
    private record Way(boolean azimuth, boolean altitude, double cost, Interpretation interpretation) {}

    private static SensesLearned weighed(
            ScrewSenses before, Interpretation asEntered, boolean azimuth, boolean altitude) {
        double asEnteredCost = asEntered.cost() + priorCost(before, false, false);
        List<Way> ways = new ArrayList<>(List.of(new Way(false, false, asEnteredCost, asEntered)));
        if (azimuth) {
            ways.add(way(before, asEntered, true, false));
        }
        if (altitude) {
            ways.add(way(before, asEntered, false, true));
        }
        if (azimuth && altitude) {
            ways.add(way(before, asEntered, true, true));
        }
        // Of equals, min takes the first: as entered.
        Way best = ways.stream().min(Comparator.comparingDouble(Way::cost)).orElseThrow();
        double all = ways.stream().mapToDouble(way -> weight(way, best)).sum();
        double azimuthLikeBest = ways.stream()
                .filter(way -> way.azimuth() == best.azimuth())
                .mapToDouble(way -> weight(way, best))
                .sum();
        double altitudeLikeBest = ways.stream()
                .filter(way -> way.altitude() == best.altitude())
                .mapToDouble(way -> weight(way, best))
                .sum();
        return new SensesLearned(
                best.interpretation(),
                new ScrewSenses(
                        azimuth ? azimuthLikeBest / all : before.azimuth(),
                        altitude ? altitudeLikeBest / all : before.altitude(),
                        before.azimuthTried() || azimuth,
                        before.altitudeTried() || altitude,
                        otherPlaces(ways, best, all)));
    }

    private static List<ScrewSenses.Otherwise> otherPlaces(List<Way> ways, Way best, double all) {
        return ways.stream()
                .filter(way -> !way.equals(best))
                .map(way -> new ScrewSenses.Otherwise(
                        weight(way, best) / all,
                        way.interpretation().night().last().offset()))
                .filter(other -> other.probability() > 1 - ScrewSenses.KNOWN)
                .toList();
    }

    private static double weight(Way way, Way best) {
        return Math.exp((best.cost() - way.cost()) / 2);
    }

    private static Way way(ScrewSenses before, Interpretation asEntered, boolean azimuth, boolean altitude) {
        NightSmoother other =
                asEntered.smoother().with(reversed(asEntered.smoother().rig(), azimuth, altitude));
        ForwardPass firstGuess = other.firstGuess();
        double prior = priorCost(before, azimuth, altitude);
        double oneMistake = asEntered.cost() + ChiSquareLimits.onceInAThousand(2) + prior;
        // If everything fits as entered and nothing fits with the screw reversed, solving the reversed case is skipped:
        // it is given the cost of one wrong sighting.
        if (asEntered.isUnremarkable() && Contradictions.isFarBeyondChance(other, firstGuess)) {
            return new Way(azimuth, altitude, oneMistake, asEntered);
        }
        return Contradictions.weighUnless(
                        other, firstGuess, interpretation -> interpretation.leastCost() >= asEntered.cost() + NO_WEIGHT)
                .map(interpretation -> new Way(azimuth, altitude, interpretation.cost() + prior, interpretation))
                .orElseGet(() -> new Way(azimuth, altitude, asEntered.cost() + NO_WEIGHT + prior, asEntered));
    }

    private static double priorCost(ScrewSenses before, boolean azimuth, boolean altitude) {
        return -2 * Math.log(azimuth ? 1 - before.azimuth() : before.azimuth())
                - 2 * Math.log(altitude ? 1 - before.altitude() : before.altitude());
    }

    private static SensesLearned overrulingDescribedRig(CondensedPast past, List<Step> steps, SensesLearned unchanged) {
        Interpretation asEntered = unchanged.interpretation();
        ScrewSenses before = unchanged.senses();
        if (asEntered.isUnremarkable() || !asEntered.mayBecomeUnremarkable()) {
            return unchanged;
        }
        boolean azimuth = !isOpen(past, past.senses().azimuth()) && turned(steps, true, TURNS_TO_OVERRULE);
        boolean altitude = !isOpen(past, past.senses().altitude()) && turned(steps, false, TURNS_TO_OVERRULE);
        Rig rig = asEntered.smoother().rig();
        List<Rig> others = new ArrayList<>();
        if (azimuth) {
            others.add(reversed(rig, true, false));
        }
        if (altitude) {
            others.add(reversed(rig, false, true));
        }
        if (azimuth && altitude) {
            others.add(reversed(rig, true, true));
        }
        return others.stream()
                // The reversed rig has to explain every sighting.
                .flatMap(other ->
                        Contradictions.believingAll(asEntered.smoother().with(other)).stream())
                .filter(interpretation -> interpretation.cost() < asEntered.cost() - COST_OF_OVERRULING)
                .min(Comparator.comparingDouble(Interpretation::cost))
                .map(interpretation -> new SensesLearned(interpretation, overruled(before, asEntered, interpretation)))
                .orElse(unchanged);
    }

    /** The senses after overruling a described rig, whose prior odds equal the evidence required to overrule it. */
    private static ScrewSenses overruled(ScrewSenses before, Interpretation asEntered, Interpretation learned) {
        double sure = 1 / (1 + Math.exp((learned.cost() + COST_OF_OVERRULING - asEntered.cost()) / 2));
        Rig described = asEntered.smoother().rig();
        Rig rig = learned.smoother().rig();
        return new ScrewSenses(
                rig.azimuthScrew().equals(described.azimuthScrew()) ? before.azimuth() : sure,
                rig.altitudeScrew().equals(described.altitudeScrew()) ? before.altitude() : sure,
                before.azimuthTried(),
                before.altitudeTried(),
                List.of());
    }

    private static boolean turned(List<Step> steps, boolean azimuth, int times) {
        return turns(steps)
                        .filter(turn -> !(azimuth ? turn.azimuth() : turn.altitude()).isNone())
                        .limit(times)
                        .count()
                == times;
    }

    private static Stream<Step.Turned> turns(List<Step> steps) {
        return steps.stream().filter(Step.Turned.class::isInstance).map(Step.Turned.class::cast);
    }

    private static Rig reversed(Rig rig, boolean azimuth, boolean altitude) {
        return rig.withScrews(
                azimuth ? rig.azimuthScrew().reversed() : rig.azimuthScrew(),
                altitude ? rig.altitudeScrew().reversed() : rig.altitudeScrew(),
                rig.levelSigma());
    }
}
