package polewright.bench.independent;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.ScrewTurn;
import polewright.bench.frames.Spread;
import polewright.bench.frames.Verdict;
import polewright.bench.independent.truth.Wedge;
import polewright.mount.rig.Rig;
import polewright.session.event.NightEvent;

/**
 * Visual nights of a person who stated nothing about a wedge whose screws have either sense with equal probability:
 * does the advice get there, how soon, and does it mislead on the way?
 */
final class ScrewsStudy {
    private static final double LARGEST_OFFSET_DEG = 2.5;
    private static final double LEAST_LATITUDE_DEG = 20;
    private static final double MUCH_FARTHER = 1.3;
    /** A test turn may move the axis this much the wrong way: what is clearly visible in a finder, common practice. */
    private static final double MOST_OF_A_TEST_ARCMIN = 60;

    private static final double FINE_ALLOWANCE_ARCMIN = 5;
    private static final int SIGHTINGS_FOR_A_SENSE = 2;

    private ScrewsStudy() {}

    /** A night that has not begun; drawn again for each player, so that all get the same. */
    private record Evening(Scene scene, TrueWedge screws, Wedge wedge) {
        static Evening of(long seed) {
            Scene scene = Scene.drawn(seed, LEAST_LATITUDE_DEG, LARGEST_OFFSET_DEG);
            TrueWedge screws = TrueWedge.sensesEven(scene.random());
            return new Evening(scene, screws, screws.at(scene));
        }

        PlayedNight advised(Rig rig, double allowance) {
            return Person.play(scene, wedge, Told.truly(scene, rig), Habits.USUAL, allowance);
        }
    }

    /** The same night played three ways. */
    private record Trio(PlayedNight advised, PlayedNight correctlyStated, HandbookPerson.Ended plain) {
        static Trio of(long seed, double allowance) {
            Evening stated = Evening.of(seed);
            Evening plain = Evening.of(seed);
            return new Trio(
                    Evening.of(seed).advised(TrueWedge.nothingStated(), allowance),
                    stated.advised(stated.screws().correctlyStated(), allowance),
                    HandbookPerson.play(plain.scene(), plain.wedge(), allowance));
        }

        int moreAdjustments() {
            return advised.adjustments() - correctlyStated.adjustments();
        }
    }

    static int run(StudyOptions options) {
        double allowance = options.allowanceArcmin();
        System.out.printf(
                Locale.ROOT,
                "%s: by eye, allowance %.0f', senses even, gains 25 %%, to %.1f degrees off a side%n%n",
                options.seeds(),
                allowance,
                LARGEST_OFFSET_DEG);
        List<Trio> nights = options.played(seed -> {
            Trio trio = Trio.of(seed, allowance);
            if (options.describesOneNight()) {
                System.out.println("seed " + seed);
                NightInWords.print(trio.advised());
            }
            return trio;
        });
        List<PlayedNight> advised = nights.stream().map(Trio::advised).toList();
        List<PlayedNight> stopped =
                advised.stream().filter(PlayedNight::isStopped).toList();
        Verdict verdict = new Verdict();
        double stops = share(advised, PlayedNight::isStopped);
        verdict.require(stops >= 0.995, percent("stops, at least 99.5 %", stops));
        double falseStops = share(stopped, PlayedNight::isFalseStop);
        verdict.require(falseStops <= 0.03, percent("of those false, at most 3 %", falseStops));
        double farther = share(advised, ScrewsStudy::isEverFarther);
        verdict.require(
                farther <= 0.005,
                percent("nights ever farther off than 1.3 times at first plus the test turn, at most 0.5 %", farther));
        long orders =
                advised.stream().mapToLong(ScrewsStudy::ordersOfSeenScrews).sum();
        long against = advised.stream().mapToLong(ScrewsStudy::ordersAgainst).sum();
        double wrong = orders == 0 ? 0 : (double) against / orders;
        verdict.require(
                wrong <= 0.005,
                percent("orders against the true sense after the second sighting of a turn, at most 0.5 %", wrong)
                        + " (" + against + " of " + orders + ")");
        double more = spread(nights, Trio::moreAdjustments).median();
        verdict.require(
                more <= 1,
                String.format(
                        Locale.ROOT,
                        "adjustments more than with a rig told rightly, at most 1 in the median: %.0f",
                        more));
        boolean fine = allowance <= FINE_ALLOWANCE_ARCMIN;
        Spread minutes = spread(advised, PlayedNight::minutes);
        verdict.require(
                minutes.median() <= (fine ? 50 : 30),
                String.format(
                        Locale.ROOT,
                        "minutes, at most %d in the median: %.0f (90 %%: %.0f)",
                        fine ? 50 : 30,
                        minutes.median(),
                        minutes.quantile(0.9)));
        Spread events = spread(advised, PlayedNight::events);
        verdict.require(
                events.median() <= 9,
                String.format(
                        Locale.ROOT,
                        "events, at most 9 in the median: %.0f (90 %%: %.0f)",
                        events.median(),
                        events.quantile(0.9)));
        Spread plain = spread(nights, trio -> trio.plain().minutes());
        double ratio = minutes.median() / plain.median();
        verdict.require(
                ratio <= 0.6,
                String.format(
                        Locale.ROOT,
                        "of the plain routine's minutes, at most 0.6: %.2f (plain: %.0f)",
                        ratio,
                        plain.median()));
        printOther(nights, advised);
        return verdict.status();
    }

    /** Figures without a target of their own. */
    private static void printOther(List<Trio> nights, List<PlayedNight> advised) {
        List<PlayedNight> stated = nights.stream().map(Trio::correctlyStated).toList();
        System.out.printf(
                Locale.ROOT,
                "%nadjustments: median %.0f, 90 %% %.0f; refused entries %d%n",
                spread(advised, PlayedNight::adjustments).median(),
                spread(advised, PlayedNight::adjustments).quantile(0.9),
                advised.stream().mapToInt(night -> night.refusals().size()).sum());
        System.out.printf(
                Locale.ROOT,
                "rig told rightly: stops %.1f %%, of those false %.1f %%, minutes %.0f, events %.0f, adjustments %.0f%n",
                100 * share(stated, PlayedNight::isStopped),
                100 * share(stated.stream().filter(PlayedNight::isStopped).toList(), PlayedNight::isFalseStop),
                spread(stated, PlayedNight::minutes).median(),
                spread(stated, PlayedNight::events).median(),
                spread(stated, PlayedNight::adjustments).median());
        List<PlayedNight> sure =
                advised.stream().filter(PlayedNight::isSureStop).toList();
        System.out.printf(
                Locale.ROOT,
                "stops at 95 %% or more: %d, of those false %.1f %%%n",
                sure.size(),
                100 * share(sure, PlayedNight::isFalseStop));
        List<HandbookPerson.Ended> plain = nights.stream().map(Trio::plain).toList();
        System.out.printf(
                Locale.ROOT,
                "plain routine: stops %.1f %%, of those false %.1f %%%n",
                100 * share(plain, HandbookPerson.Ended::stopped),
                100 * share(plain.stream().filter(HandbookPerson.Ended::stopped).toList(), ended -> !ended.good()));
        MinutesByAct.print(advised);
    }

    private static boolean isEverFarther(PlayedNight night) {
        double first = night.moments().get(0).offset().arcmin();
        double limit = MUCH_FARTHER * first + Math.min(MOST_OF_A_TEST_ARCMIN, testArcmin(night));
        return night.moments().stream().anyMatch(moment -> moment.offset().arcmin() > limit);
    }

    /** Sum of the moves of the axis by the first turn of each screw. */
    private static double testArcmin(PlayedNight night) {
        boolean azimuthSeen = false;
        boolean altitudeSeen = false;
        double sum = 0;
        for (int i = 1; i < night.moments().size(); i++) {
            Moment moment = night.moments().get(i);
            if (moment.event().event() instanceof NightEvent.ScrewsTurned turned) {
                boolean isFirst =
                        (turned.azimuthTurns() != 0 && !azimuthSeen) || (turned.altitudeTurns() != 0 && !altitudeSeen);
                azimuthSeen |= turned.azimuthTurns() != 0;
                altitudeSeen |= turned.altitudeTurns() != 0;
                if (isFirst) {
                    sum += moment.offset()
                            .minus(night.moments().get(i - 1).offset())
                            .arcmin();
                }
            }
        }
        return sum;
    }

    private static long ordersOfSeenScrews(PlayedNight night) {
        return orders(night, false);
    }

    private static long ordersAgainst(PlayedNight night) {
        return orders(night, true);
    }

    /**
     * Orders for a screw that was turned before and has been followed by two sightings or more since its first turn.
     */
    private static long orders(PlayedNight night, boolean onlyAgainst) {
        int[] sightingsSince = {-1, -1};
        long count = 0;
        for (Moment moment : night.moments()) {
            if (moment.event().event() instanceof NightEvent.SightingTaken) {
                for (int screw = 0; screw < 2; screw++) {
                    sightingsSince[screw] += sightingsSince[screw] < 0 ? 0 : 1;
                }
            } else if (moment.event().event() instanceof NightEvent.ScrewsTurned turned) {
                sightingsSince[0] = turned.azimuthTurns() != 0 ? Math.max(0, sightingsSince[0]) : sightingsSince[0];
                sightingsSince[1] = turned.altitudeTurns() != 0 ? Math.max(0, sightingsSince[1]) : sightingsSince[1];
            }
            if (moment.night().advice() instanceof Advice.TurnScrews order) {
                for (ScrewTurn turn : order.turns()) {
                    int screw = turn.screw() == ScrewTurn.Which.AZIMUTH ? 0 : 1;
                    boolean isSeen = sightingsSince[screw] >= SIGHTINGS_FOR_A_SENSE;
                    count += isSeen && (!onlyAgainst || isAgainst(moment, turn)) ? 1 : 0;
                }
            }
        }
        return count;
    }

    /** Whether the order assumes the wrong sense of the screw. */
    private static boolean isAgainst(Moment moment, ScrewTurn turn) {
        Rig learned = moment.night().situation().rig();
        return turn.screw() == ScrewTurn.Which.AZIMUTH
                ? learned.azimuthScrew().clockwise().sign()
                        != moment.wedge().azimuthScrew().sense()
                : learned.altitudeScrew().clockwise().sign()
                        != moment.wedge().altitudeScrew().sense();
    }

    private static <T> double share(List<T> nights, Predicate<T> that) {
        return nights.isEmpty() ? 0 : (double) nights.stream().filter(that).count() / nights.size();
    }

    private static <T> Spread spread(List<T> nights, ToDoubleFunction<T> figure) {
        return new Spread(nights.stream().mapToDouble(figure));
    }

    private static String percent(String what, double share) {
        return String.format(Locale.ROOT, "%s: %.1f %%", what, 100 * share);
    }
}
