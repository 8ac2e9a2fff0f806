package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.allowance.DiscAllowance;
import polewright.mount.AxisOffset;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.planning.seasons.AxisTrend;
import polewright.planning.seasons.NightGap;
import polewright.planning.seasons.NightRecord;
import polewright.planning.seasons.PierMotion;
import polewright.planning.seasons.Seasons;
import polewright.session.NightId;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStars;
import polewright.sky.place.Site;

/** Comparison of nights, on piers whose motion is known only to the simulator. */
@Tag("slow")
class SeasonsTest {
    private static final Rig RIG = Rig.typicalForkOnWedge();
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);
    private static final AxisOffset FIRST = AxisOffset.ofArcminutes(25, -18);

    private static RestlessPier still(long seed) {
        return pier(RestlessPier.steadily(0, 0), seed);
    }

    private static Site site(long seed) {
        return seed % 2 == 0 ? LARKFELL : TUSSOCK_FLAT;
    }

    private static RestlessPier pier(Function<Instant, AxisOffset> motion, long seed) {
        return new RestlessPier(site(seed), RIG, FIRST, motion, seed);
    }

    private static PierMotion.Fitted fitted(RestlessPier pier) {
        return (PierMotion.Fitted) pier.compared().motion();
    }

    private static void assertWithin(AxisOffset value, AxisOffset truth, polewright.mount.OffsetCovariance covariance) {
        assertThat(covariance.normalisedSquare(value.minus(truth))).isLessThan(20);
    }

    @ParameterizedTest
    @ValueSource(longs = {10, 11})
    void night_isSummarisedByInitialAndFinalAxis(long seed) {
        RestlessPier pier = still(seed);
        AxisOffset before = pier.wedge().offset();
        pier.night(0, RestlessPier::setRight);
        NightRecord night = pier.nights().get(0);

        assertWithin(
                night.axisAtStart().orElseThrow().offset(),
                before,
                night.axisAtStart().orElseThrow().covariance());
        assertWithin(
                night.axisAtEnd().orElseThrow().offset(),
                pier.wedge().offset(),
                night.axisAtEnd().orElseThrow().covariance());
        assertThat(night.axisAtEnd().orElseThrow().offset().distance().arcminutes())
                .isLessThan(12);
        assertThat(night.turns()).isEqualTo(1);
        assertThat(night.isMoved()).isTrue();
        assertThat(night.isSightedAfterMove()).isTrue();
        assertThat(night.sightings().values()).containsExactly(2);
        assertThat(night.contradictions()).isEmpty();
    }

    @Test
    void nightPlayedToStop_takesTheMinutesUntilStop() {
        RandomGenerator random = PractisedWedge.random(20);
        HiddenWedge wedge = HiddenWedge.of(LARKFELL, RIG, FIRST, random);
        List<RehearsedNight.Moment> played = RehearsedNight.play(
                "Larkfell",
                wedge,
                DiscAllowance.VISUAL,
                Instant.parse("2026-01-10T20:00:00Z"),
                NamedStars.bundled().all(),
                random);
        List<LoggedEvent> events = new ArrayList<>(
                played.stream().map(RehearsedNight.Moment::event).toList());
        LoggedEvent last = events.get(events.size() - 1);
        Duration toStop = Duration.between(events.get(0).at(), last.at());
        events.add(new LoggedEvent(last.seq() + 1, last.at().plus(Duration.ofHours(3)), new NightEvent.Noted("dew")));

        NightRecord night = NightRecord.of(new NightId(1), events);

        assertThat(night.isStopped()).isTrue();
        assertThat(night.taken()).isEqualTo(toStop);
        assertThat(NightRecord.of(new NightId(1), events.subList(0, events.size() - 2))
                        .isStopped())
                .isFalse();
    }

    @Test
    void withdrawnTurn_isNotCounted() {
        RestlessPier pier = still(30);
        pier.night(0, night -> RestlessPier.setRight(night).log(new NightEvent.Withdrawn(3)));

        assertThat(pier.nights().get(0).turns()).isZero();
    }

    @ParameterizedTest
    @ValueSource(longs = {40, 41, 42, 43})
    void pierMotion_isTheDriftBetweenTheNights(long seed) {
        RestlessPier pier = still(seed);
        AxisOffset did = AxisOffset.ofArcminutes(4, -6);
        pier.night(0, RestlessPier::setRight).moved(did).night(30, RestlessPier::setRight);
        NightGap.Drifted drift = pier.drift(0);

        assertWithin(drift.drift(), did, drift.covariance());
        assertThat(drift.isSignificant()).isTrue();
        assertThat(drift.duration()).isBetween(Duration.ofDays(29), Duration.ofDays(31));
    }

    /** By chance alone it would be reported once in a hundred times. */
    @Test
    void stablePier_isSeldomReportedAsMoved() {
        int said = 0;
        for (long seed = 100; seed < 160; seed++) {
            RestlessPier pier =
                    still(seed).night(0, PractisedWedge::seenByCamera).night(1, PractisedWedge::seenByCamera);
            said += pier.drift(0).isSignificant() ? 1 : 0;
        }
        assertThat(said).isLessThanOrEqualTo(4);
    }

    @Test
    void earlyClamping_widensTheInitialAxisByTheClampShift() {
        RestlessPier pier = still(44);
        pier.night(0, night -> night.log(new NightEvent.Unclamped()).seenByCamera());

        assertThat(pier.nights().get(0).axisAtStart().orElseThrow().covariance().smallestSigma())
                .isGreaterThan(RIG.clampingSigma().times(0.99));
    }

    @ParameterizedTest
    @ValueSource(longs = {200, 201})
    void steadilyMovingPier_isDescribedByItsRateAndCorrectingTurns(long seed) {
        RestlessPier pier = pier(RestlessPier.steadily(1.2, -0.8), seed);
        for (int i = 0; i < 9; i++) {
            pier.night(i * 30, RestlessPier::setRight);
        }
        PierMotion.Fitted fitted = fitted(pier);

        assertThat(fitted.drifts()).isEqualTo(8);
        assertThat(fitted.setAside()).isEmpty();
        assertThat(fitted.isYearly()).isFalse();
        assertThat(fitted.east().arcminPerMonth())
                .isCloseTo(1.2, within(4 * fitted.east().sigmaPerMonth()));
        assertThat(fitted.up().arcminPerMonth())
                .isCloseTo(-0.8, within(4 * fitted.up().sigmaPerMonth()));
        assertThat(fitted.east().isShown()).isTrue();
        assertThat(fitted.east().sigmaPerMonth()).isLessThan(0.3);

        // A wedge whose screws match the rig description exactly: a hundred months' drift is corrected by a hundred
        // times the turns.
        HiddenWedge plain = PractisedWedge.pointing(
                PractisedWedge.withFactors(
                        HiddenWedge.of(site(seed), RIG, AxisOffset.NONE, PractisedWedge.random(seed)), 1, 1),
                AxisOffset.ofArcminutes(120, -80));
        HiddenWedge back = plain.turned(
                HandTurns.straight(100 * fitted.monthlyCorrection().azimuth()),
                HandTurns.straight(100 * fitted.monthlyCorrection().altitude()),
                PractisedWedge.random(seed));
        assertThat(back.offset().distance().arcminutes())
                .isLessThan(0.3 * plain.offset().distance().arcminutes());
    }

    /**
     * The truth is within the 95 % interval of Student's t as often as it should be, whether anything was touched or
     * not.
     */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void rate_hasItsStatedUncertainty(boolean isTouched) {
        int held = 0;
        int asked = 0;
        for (long seed = 300; seed < 350; seed++) {
            RestlessPier pier = pier(RestlessPier.steadily(0.5, 0.3), seed);
            for (int i = 0; i < 7; i++) {
                pier.shaken(isTouched ? Angle.ofArcminutes(0.6) : Angle.ZERO)
                        .night(i * 20, isTouched ? RestlessPier::setRight : PractisedWedge::seenByEye);
            }
            PierMotion.Fitted fitted = fitted(pier);
            double widest = new TDistribution(fitted.drifts() - 1).inverseCumulativeProbability(0.975);
            held += Math.abs(fitted.east().arcminPerMonth() - 0.5)
                            <= widest * fitted.east().sigmaPerMonth()
                    ? 1
                    : 0;
            held += Math.abs(fitted.up().arcminPerMonth() - 0.3)
                            <= widest * fitted.up().sigmaPerMonth()
                    ? 1
                    : 0;
            asked += 2;
        }
        // Of 100, five standard deviations below 95.
        assertThat(held / (double) asked).isGreaterThan(0.84);
    }

    /**
     * While the mount is not touched, each night is a reading of one moving quantity, and the uncertainty of the
     * slope is that of simple regression on the readings: σ / √Σ(t − t̄)² (common practice). Treating the drifts as
     * independent would make it three times larger.
     */
    @Test
    void untouchedNights_areReadingsOfOneQuantity() {
        RestlessPier pier = pier(RestlessPier.steadily(0.5, 0.3), 390);
        int count = 7;
        double spacing = 20 * 12 / 365.25;
        double squares = 0;
        for (int i = 0; i < count; i++) {
            pier.night(i * 20, PractisedWedge::seenByCamera);
            squares += Math.pow((i - (count - 1) / 2.0) * spacing, 2);
        }
        double variance =
                pier.nights().get(0).axisAtStart().orElseThrow().covariance().eastEastArcmin2();

        assertThat(fitted(pier).east().scatterArcmin()).isZero();
        assertThat(fitted(pier).east().sigmaPerMonth() / Math.sqrt(variance / squares))
                .isCloseTo(1, within(0.08));
    }

    @Test
    void bump_isSetAsideAndNamed() {
        RestlessPier pier = pier(RestlessPier.steadily(0.5, 0), 400);
        for (int i = 0; i < 10; i++) {
            if (i == 6) {
                pier.moved(AxisOffset.ofArcminutes(-14, 9));
            }
            pier.night(i * 25, RestlessPier::setRight);
        }
        PierMotion.Fitted fitted = fitted(pier);

        assertThat(fitted.setAside()).hasSize(1);
        assertThat(fitted.setAside().get(0).from().id().number()).isEqualTo(6);
        assertThat(fitted.east().arcminPerMonth())
                .isCloseTo(0.5, within(4 * fitted.east().sigmaPerMonth()));
        assertThat(fitted.east().sigmaPerMonth()).isLessThan(0.3);
    }

    /** Highest on the 1st of April. */
    private static Function<Instant, AxisOffset> swinging(double arcmin) {
        return at -> AxisOffset.ofArcminutes(
                0.3 * RestlessPier.months(at),
                arcmin
                        * Math.sin(2
                                * Math.PI
                                * Duration.between(Instant.parse("2025-01-01T00:00:00Z"), at)
                                        .toSeconds()
                                / (365.25 * 86_400)));
    }

    @Test
    void annualSwing_isFoundWhenTheNightsCoverAYear() {
        RestlessPier pier = pier(swinging(4), 500);
        for (int i = 0; i < 20; i++) {
            pier.night(i * 28, RestlessPier::setRight);
        }
        PierMotion.Fitted fitted = fitted(pier);

        assertThat(fitted.isYearly()).isTrue();
        AxisTrend.Swing swing = fitted.up().swing().orElseThrow();
        assertThat(swing.arcmin()).isCloseTo(4, within(4 * swing.sigmaArcmin()));
        assertThat(swing.greatestAt()).isCloseTo(0.25, within(0.08));
        assertThat(fitted.east().arcminPerMonth())
                .isCloseTo(0.3, within(4 * fitted.east().sigmaPerMonth()));
        AxisTrend.Swing none = fitted.east().swing().orElseThrow();
        assertThat(none.arcmin()).isLessThan(4 * none.sigmaArcmin());
    }

    @Test
    void annualSwing_isNotFoundInHalfAYearOrWithoutOne() {
        RestlessPier halfAYear = pier(swinging(4), 510);
        for (int i = 0; i < 12; i++) {
            halfAYear.night(i * 16, RestlessPier::setRight);
        }
        RestlessPier steady = pier(RestlessPier.steadily(0.3, 0.1), 512);
        for (int i = 0; i < 20; i++) {
            steady.night(i * 28, RestlessPier::setRight);
        }

        assertThat(fitted(halfAYear).isYearly()).isFalse();
        assertThat(fitted(steady).isYearly()).isFalse();
    }

    @Test
    void oneNight_isTooFew_andThreeGiveNoLine() {
        RestlessPier pier = still(600).night(0, RestlessPier::setRight);
        assertThat(pier.seasons())
                .isInstanceOfSatisfying(
                        Seasons.TooFew.class,
                        few -> assertThat(few.missing())
                                .isEqualTo("Two nights with a fix are needed, at one site with one rig; there is"
                                        + " one"));

        pier.night(20, RestlessPier::setRight).night(40, RestlessPier::setRight);
        assertThat(pier.compared().motion())
                .isEqualTo(new PierMotion.NotYet(
                        "A trend needs 4 nights in a row that leave and find the axis to better than 15′; there are 2"
                                + " drifts between such nights so far"));
    }

    @Test
    void fourNightsInAWeek_giveNoLine() {
        RestlessPier pier = still(610);
        for (int i = 0; i < 4; i++) {
            pier.night(i * 2, RestlessPier::setRight);
        }
        assertThat(pier.compared().motion())
                .isEqualTo(new PierMotion.NotYet("A trend needs two weeks; these nights cover 6 days"));
    }

    @Test
    void mountThatWasCarriedAway_didNotDrift() {
        RestlessPier pier = still(620)
                .night(0, RestlessPier::setRight)
                .moved(AxisOffset.ofArcminutes(150, 20))
                .night(10, RestlessPier::setRight);

        assertThat(pier.compared().gaps()).singleElement().isInstanceOf(NightGap.SetDownAgain.class);
    }

    @Test
    void turningBeforeSighting_orDoubtAtTheEnd_breaksTheSeries() {
        RestlessPier pier = still(630)
                .night(0, RestlessPier::setRight)
                .night(
                        10,
                        night -> night.turned(HandTurns.straight(1), HandTurns.straight(0))
                                .seenByCamera()
                                .log(new NightEvent.Knocked()))
                .night(20, RestlessPier::setRight);

        assertThat(pier.compared().gaps())
                .extracting(gap -> ((NightGap.NotKnown) gap).reason())
                .containsExactly(
                        "It is not known how night 2 found the axis: take a sighting before anything is turned",
                        "It is not known how night 2 left the axis: end each night with a sighting, clamps tight");
    }

    @Test
    void nightWithoutSightingsOrTurns_isIgnored() {
        RestlessPier pier = still(640)
                .night(0, RestlessPier::setRight)
                .night(10, night -> night.log(new NightEvent.Noted("clouds")))
                .moved(AxisOffset.ofArcminutes(5, 0))
                .night(20, RestlessPier::setRight);

        assertThat(pier.drift(0).from().id().number()).isEqualTo(1);
        assertThat(pier.drift(0).to().id().number()).isEqualTo(3);
    }

    @Test
    void twoNightsWithTurnsBetween_giveNoDrift_norDoOtherPlaces() {
        RestlessPier pier = still(650)
                .night(0, RestlessPier::setRight)
                .night(10, RestlessPier::setRight)
                .night(20, RestlessPier::setRight);
        RestlessPier far = still(651).night(30, RestlessPier::setRight);
        List<NightRecord> nights = pier.nights();

        assertThat(NightGap.between(nights.get(0), nights.get(2), nights))
                .isInstanceOfSatisfying(
                        NightGap.NotKnown.class,
                        unknown -> assertThat(unknown.reason())
                                .isEqualTo("The mount was worked on between them, on night 2"));
        assertThat(NightGap.between(nights.get(0), nights.get(1), nights)).isInstanceOf(NightGap.Drifted.class);
        assertThat(NightGap.between(nights.get(0), far.nights().get(0), nights))
                .isInstanceOfSatisfying(
                        NightGap.NotKnown.class,
                        unknown -> assertThat(unknown.reason()).isEqualTo("They differ in site or rig"));
        List<NightRecord> all = new ArrayList<>(nights);
        all.addAll(far.nights());
        assertThat(Seasons.of(pier.seasons().pier(), all).nights()).hasSize(3);
    }
}
