package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * When sightings do not fit, the fault may lie with a turn instead: the wrong way round, the wrong screw, not made at all,
 * or made by a screw that slipped.
 */
final class TurnSuspects {
    // A turn is told wrongly about as seldom as a sighting: against the word of one sighting alone, which of the two it
    // was is of no more interest once the axis has been seen anew, unless it would teach the screws something wrong.
    private static final double MORE_THAN_ONE_SIGHTING =
            ChiSquareLimits.onceInAThousand(1) + Contradictions.HUNDRED_TO_ONE;
    private static final double TIMES_ITS_REACH = 5;
    private static final Angle FARTHEST = Angle.ofDegrees(30);
    // A turn told the other way round also changes which way its screw was left, and so whether the next turn lost its
    // play.
    private static final double PLAY_MAY_TELL = 3;
    private static final double LEAST_GAIN = Contradictions.HUNDRED_TO_ONE - PLAY_MAY_TELL;
    private static final double HARDLY_MOVED = 0.7;
    private static final double GAIN_AT_A_GLANCE = LEAST_GAIN - 2;
    private static final double MARGIN_AT_A_GLANCE = 1.2;
    // A suspicion is dropped when it has set aside more than it can be worth, and this: as much as three sightings that
    // come
    // back when a worse one is gone.
    private static final double MAY_BE_TAKEN_BACK = 3 * ChiSquareLimits.onceInAThousand(1);

    private TurnSuspects() {}

    /**
     * What may have been turned instead of what was told.
     *
     * @param told the turn as it was told
     * @param meant the step that it may have been
     * @param surcharge what it assumes besides, in units of χ²
     * @param words completes "it would fit if …"
     */
    private record Suspicion(Step.Turned told, Step meant, double surcharge, String words) {
        static Suspicion instead(Step.Turned told, HandTurns azimuth, HandTurns altitude, String words) {
            return new Suspicion(told, new Step.Turned(told.seq(), azimuth, altitude), 0, words);
        }
    }

    /**
     * A turn that may have been made otherwise than told.
     *
     * @param account the night with it made so
     * @param isExact whether that leaves no choice of how far the axis went
     */
    record Suspected(Mistake.TurnMistaken mistake, Interpretation account, boolean isExact) {}

    private record Weighed(Suspicion suspicion, Interpretation account) {
        /** Nothing if a screw would have slipped by what no screw slips by. */
        Optional<Suspected> suspected(Site site, Rig rig) {
            if (suspicion.meant() instanceof Step.Slipped slipped) {
                return SlippedFraction.of(account, slipped, site, rig)
                        .words()
                        .map(share -> suspected(suspicion.words() + share + " of its turns took effect", false));
            }
            return Optional.of(suspected(suspicion.words(), true));
        }

        private Suspected suspected(String words, boolean isExact) {
            return new Suspected(
                    new Mistake.TurnMistaken(suspicion.told().seq(), suspicion.meant(), words), account, isExact);
        }
    }

    /**
     * The turns that may have been made otherwise, if that is no less likely than setting sightings aside; where none are,
     * with odds of a hundred to one. The likeliest come first.
     *
     * @param plain the night with every turn as told
     */
    static List<Suspected> of(Site site, Rig rig, List<Step> steps, Interpretation plain) {
        if (steps.stream().noneMatch(Step.Turned.class::isInstance)) {
            return List.of();
        }
        NightSmoother asTold = plain.smoother().with(rig);
        SmoothedNight believingAll = asTold.solve(Set.of());
        Court court = new Court(plain, asTold, believingAll, plain.believingEach());
        return steps.stream()
                .filter(Step.Turned.class::isInstance)
                .map(Step.Turned.class::cast)
                .flatMap(turned -> weighed(site, rig, turned, court))
                .filter(w -> w.account().night().settled())
                .filter(w -> plain.cost() - w.account().cost() > leastGain(plain))
                .sorted(Comparator.comparingDouble(w -> w.account().cost()))
                .flatMap(w -> w.suspected(site, rig).stream())
                .toList();
    }

    /**
     * What every suspicion is weighed against.
     *
     * @param plain the night with every turn as told, as it is told best
     * @param asTold for solving it with one turn other than told
     * @param believingAll by the rig's word, with no sighting set aside
     * @param believingEach for each that is set aside, how the night looks at first sight with it believed
     */
    private record Court(
            Interpretation plain,
            NightSmoother asTold,
            SmoothedNight believingAll,
            Map<Step.Sighted, SmoothedNight> believingEach) {
        /** The night with one turn having taken the axis anywhere within its reach. */
        NightSmoother freeing(Step.Turned told, Rig rig) {
            return asTold.with(new Step.Shifted(told.seq(), reach(told, rig)), told);
        }

        /**
         * Whether a turn is cleared at a glance: as {@link #clearsAtOnce}, with sightings taken as straight and by a margin
         * for that. What it takes off the χ² of one that is set aside is what freedom gains more with that one believed.
         */
        boolean clearsAtAGlance(Step.Turned told, Rig rig) {
            if (plain.surcharge() > 0 || !plain.night().settled()) {
                return false;
            }
            Angle reach = reach(told, rig);
            double gain = plain.night().gainOfFreedom(told, reach);
            return gain <= GAIN_AT_A_GLANCE
                    && believingEach.entrySet().stream().allMatch(each -> {
                        double innovation = plain.innovation(each.getKey());
                        double freed = innovation + gain - each.getValue().gainOfFreedom(told, reach);
                        return freed
                                > MARGIN_AT_A_GLANCE
                                        * Math.max(Interpretation.limit(each.getKey()), HARDLY_MOVED * innovation);
                    });
        }

        /**
         * Whether a turn is cleared at first sight: even free it would leave the night as it is told, and everything that was
         * set aside as far from fitting as it is.
         */
        boolean clearsAtOnce(NightSmoother freed) {
            Interpretation same = plain.settingAsideIn(freed);
            return same.night().settled()
                    && gain(same) <= LEAST_GAIN
                    && same.sightings().stream()
                            .filter(s -> plain.setAside().contains(s.seq()))
                            .allMatch(s -> same.innovation(s)
                                    > Math.max(Interpretation.limit(s), HARDLY_MOVED * plain.innovation(s)));
        }

        double gain(Interpretation other) {
            return plain.cost() - other.cost();
        }

        /** Whether freedom was a gain as it must be; else the sightings were set aside in an unlucky order. */
        boolean isTelling(Interpretation freed) {
            return freed.night().settled() && plain.setAside().containsAll(freed.setAside());
        }

        /** So wide that it costs next to nothing wherever these turns can have taken the axis, but no wider. */
        private Angle reach(Step.Turned told, Rig rig) {
            Angle altitude = asTold.prior().altitude();
            double turns = Math.abs(told.azimuthTurns()) + Math.abs(told.altitudeTurns());
            double most = Math.max(
                    Math.abs(rig.azimuthScrew().move(turns, altitude).radians()),
                    Math.abs(rig.altitudeScrew().move(turns, altitude).radians()));
            return new Angle(Math.min(FARTHEST.radians(), TIMES_ITS_REACH * most));
        }

        Optional<Weighed> weigh(Suspicion suspicion, Interpretation freed) {
            double worthIt = plain.cost() - leastGain(plain) - suspicion.surcharge() + MAY_BE_TAKEN_BACK;
            boolean isTelling = isTelling(freed);
            return Contradictions.weighUnless(
                            asTold.with(suspicion.meant(), suspicion.told()),
                            believingAll,
                            suspicion.surcharge(),
                            account ->
                                    (isTelling ? freed.cost() + spent(account, freed) : account.leastCost()) > worthIt)
                    .map(account -> new Weighed(suspicion, account));
        }

        /** What it costs to set aside sightings that fit as long as the turn is free: at least so much more must be gained. */
        private static double spent(Interpretation account, Interpretation freed) {
            return account.sightings().stream()
                    .filter(s -> account.setAside().contains(s.seq())
                            && !freed.setAside().contains(s.seq()))
                    .mapToDouble(s -> Math.max(0, Interpretation.limit(s) - freed.innovation(s)))
                    .sum();
        }
    }

    /**
     * The suspicions of one turn, if it has to be looked at more closely: no account of a turn can fit better than one in
     * which it took the axis anywhere at all, so that most turns of a night are cleared at one go.
     */
    private static Stream<Weighed> weighed(Site site, Rig rig, Step.Turned told, Court court) {
        if (court.clearsAtAGlance(told, rig)) {
            return Stream.empty();
        }
        NightSmoother freeing = court.freeing(told, rig);
        if (court.clearsAtOnce(freeing)) {
            return Stream.empty();
        }
        Interpretation freed = Contradictions.forgiving(freeing, court.believingAll());
        return court.isTelling(freed) && court.gain(freed) <= LEAST_GAIN
                ? Stream.empty()
                : suspicions(told, site, rig).flatMap(s -> court.weigh(s, freed).stream());
    }

    /** Where nothing is set aside, a turn must explain the night a hundred times better to be suspected. */
    private static double leastGain(Interpretation plain) {
        return plain.setAside().isEmpty() ? Contradictions.HUNDRED_TO_ONE : 0;
    }

    /** Whether a turn is worth naming though sightings could be to blame as well. */
    static boolean isWorthNaming(Interpretation asTold, Suspected suspected) {
        double gained = asTold.cost() - suspected.account().cost();
        if (gained <= Contradictions.HUNDRED_TO_ONE) {
            return false;
        }
        boolean isAtStake = asTold.surcharge() > 0 || asTold.differsNowFrom(suspected.account());
        // A slip fits anything between nothing and all: it has to explain more.
        return gained > MORE_THAN_ONE_SIGHTING || (isAtStake && suspected.isExact());
    }

    private static Stream<Suspicion> suspicions(Step.Turned told, Site site, Rig rig) {
        HandTurns azimuth = told.azimuth();
        HandTurns altitude = told.altitude();
        List<Suspicion> suspicions = new ArrayList<>();
        if (!azimuth.isNone()) {
            suspicions.add(Suspicion.instead(
                    told, azimuth.reversed(), altitude, "the azimuth screw took the axis the other way"));
        }
        if (!altitude.isNone()) {
            suspicions.add(Suspicion.instead(
                    told, azimuth, altitude.reversed(), "the altitude screw took the axis the other way"));
        }
        if (!azimuth.isNone() && !altitude.isNone()) {
            suspicions.add(Suspicion.instead(
                    told, azimuth.reversed(), altitude.reversed(), "both screws took the axis the other way"));
        }
        suspicions.add(Suspicion.instead(told, altitude, azimuth, "the other screw had been turned"));
        suspicions.add(Suspicion.instead(told, HandTurns.NONE, HandTurns.NONE, "nothing had moved"));
        if (azimuth.net() != 0) {
            suspicions.add(new Suspicion(
                    told,
                    new Step.Slipped(told, Step.Slipped.Which.AZIMUTH),
                    SlippedFraction.surcharge(Math.sqrt(variance(site, rig, AxisState.AZIMUTH_GAIN))),
                    "the azimuth screw slipped: only about "));
        }
        if (altitude.net() != 0) {
            suspicions.add(new Suspicion(
                    told,
                    new Step.Slipped(told, Step.Slipped.Which.ALTITUDE),
                    SlippedFraction.surcharge(Math.sqrt(variance(site, rig, AxisState.ALTITUDE_GAIN))),
                    "the altitude screw slipped: only about "));
        }
        return suspicions.stream();
    }

    private static double variance(Site site, Rig rig, int index) {
        return AxisState.prior(site, rig).covariance(index, index);
    }
}
