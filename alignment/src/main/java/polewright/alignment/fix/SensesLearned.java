package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import polewright.mount.rig.Rig;

/**
 * Learns which way the screws of this mount go from the turns of the night. If the sense is only assumed, either is equally
 * likely, or as likely as earlier nights have shown. A rig the owner described is seldom wrong about it, so overruling it
 * takes two turns and stronger evidence.
 *
 * @param account the night by the screws going as is likeliest
 * @param senses how sure that is
 */
record SensesLearned(Interpretation account, ScrewSenses senses) {
    private static final double AGAINST_A_RIG_THAT_WAS_TOLD = 2 * Contradictions.HUNDRED_TO_ONE;
    private static final int TURNS_AGAINST_A_RIG_THAT_WAS_TOLD = 2;
    // What differs by so much in cost has no weight left: a million to one.
    private static final double NO_WEIGHT = 2 * Math.log(1e6);

    /** The night by a rig with each screw going the likelier way. */
    static SensesLearned considered(CondensedPast past, List<Step> steps, Interpretation asTold) {
        ScrewSenses before = past.senses();
        boolean azimuth = isOpen(past, before.azimuth()) && turned(steps, true, 1);
        boolean altitude = isOpen(past, before.altitude()) && turned(steps, false, 1);
        SensesLearned asAssumed =
                azimuth || altitude ? weighed(before, asTold, azimuth, altitude) : new SensesLearned(asTold, before);
        return againstARigThatWasTold(past, steps, asAssumed);
    }

    /** Whether a sense is no more than likely; what the night itself has shown before is settled once it is known. */
    private static boolean isOpen(CondensedPast past, double sense) {
        return sense < (past.left().isEmpty() ? 1 : ScrewSenses.KNOWN);
    }

    /**
     * A way for the screws to go.
     *
     * @param azimuth whether the azimuth screw goes against the rig
     * @param cost of the night by it, in units of χ², with what was known before
     */
    private record Way(boolean azimuth, boolean altitude, double cost, Interpretation account) {}

    private static SensesLearned weighed(ScrewSenses before, Interpretation asTold, boolean azimuth, boolean altitude) {
        double told = asTold.cost() + priorCost(before, false, false);
        List<Way> ways = new ArrayList<>(List.of(new Way(false, false, told, asTold)));
        if (azimuth) {
            ways.add(way(before, asTold, true, false));
        }
        if (altitude) {
            ways.add(way(before, asTold, false, true));
        }
        if (azimuth && altitude) {
            ways.add(way(before, asTold, true, true));
        }
        // Of equals the first: as told.
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
                best.account(),
                new ScrewSenses(
                        azimuth ? azimuthLikeBest / all : before.azimuth(),
                        altitude ? altitudeLikeBest / all : before.altitude(),
                        before.azimuthTried() || azimuth,
                        before.altitudeTried() || altitude,
                        otherwise(ways, best, all)));
    }

    private static List<ScrewSenses.Otherwise> otherwise(List<Way> ways, Way best, double all) {
        return ways.stream()
                .filter(way -> !way.equals(best))
                .map(way -> new ScrewSenses.Otherwise(
                        weight(way, best) / all, way.account().night().last().offset()))
                .filter(other -> other.probability() > 1 - ScrewSenses.KNOWN)
                .toList();
    }

    private static double weight(Way way, Way best) {
        return Math.exp((best.cost() - way.cost()) / 2);
    }

    private static Way way(ScrewSenses before, Interpretation asTold, boolean azimuth, boolean altitude) {
        NightSmoother other = asTold.smoother().with(reversed(asTold.smoother().rig(), azimuth, altitude));
        ForwardPass firstGuess = other.firstGuess();
        double prior = priorCost(before, azimuth, altitude);
        double oneMistake = asTold.cost() + ChiSquareLimits.onceInAThousand(2) + prior;
        // Where all is well as told and nothing is otherwise, the other way costs a mistaken sighting, and is not
        // solved.
        if (asTold.isUnremarkable() && Contradictions.isFarBeyondChance(other, firstGuess)) {
            return new Way(azimuth, altitude, oneMistake, asTold);
        }
        return Contradictions.weighUnless(
                        other, firstGuess, account -> account.leastCost() >= asTold.cost() + NO_WEIGHT)
                .map(account -> new Way(azimuth, altitude, account.cost() + prior, account))
                .orElseGet(() -> new Way(azimuth, altitude, asTold.cost() + NO_WEIGHT + prior, asTold));
    }

    private static double priorCost(ScrewSenses before, boolean azimuth, boolean altitude) {
        return -2 * Math.log(azimuth ? 1 - before.azimuth() : before.azimuth())
                - 2 * Math.log(altitude ? 1 - before.altitude() : before.altitude());
    }

    private static SensesLearned againstARigThatWasTold(CondensedPast past, List<Step> steps, SensesLearned stays) {
        Interpretation asTold = stays.account();
        ScrewSenses before = stays.senses();
        if (asTold.isUnremarkable() || !asTold.mayBecomeUnremarkable()) {
            return stays;
        }
        boolean azimuth =
                !isOpen(past, past.senses().azimuth()) && turned(steps, true, TURNS_AGAINST_A_RIG_THAT_WAS_TOLD);
        boolean altitude =
                !isOpen(past, past.senses().altitude()) && turned(steps, false, TURNS_AGAINST_A_RIG_THAT_WAS_TOLD);
        Rig rig = asTold.smoother().rig();
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
                // It has to explain everything.
                .flatMap(other -> Contradictions.believingAll(asTold.smoother().with(other)).stream())
                .filter(account -> account.cost() < asTold.cost() - AGAINST_A_RIG_THAT_WAS_TOLD)
                .min(Comparator.comparingDouble(Interpretation::cost))
                .map(account -> new SensesLearned(account, overruled(before, asTold, account)))
                .orElse(stays);
    }

    /** A rig that was told is right as often as the evidence asked for against it says. */
    private static ScrewSenses overruled(ScrewSenses before, Interpretation asTold, Interpretation learned) {
        double sure = 1 / (1 + Math.exp((learned.cost() + AGAINST_A_RIG_THAT_WAS_TOLD - asTold.cost()) / 2));
        Rig told = asTold.smoother().rig();
        Rig rig = learned.smoother().rig();
        return new ScrewSenses(
                rig.azimuthScrew().equals(told.azimuthScrew()) ? before.azimuth() : sure,
                rig.altitudeScrew().equals(told.altitudeScrew()) ? before.altitude() : sure,
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
