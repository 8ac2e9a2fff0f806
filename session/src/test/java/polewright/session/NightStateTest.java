package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.advice.Advice;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.Fix;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Rig;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** The night as a pure function of its events. */
class NightStateTest {
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Weather WEATHER = Weather.standardAt(240);
    private static final NightEvent BEGUN =
            new NightEvent.Begun("Larkfell", LARKFELL, WEATHER, Rig.typicalForkOnWedge(), DiscAllowance.VISUAL);

    private static final Sighting COMPASS =
            new CompassBearing(EVENING, Angle.ofDegrees(2), Angle.ofDegrees(-1), CompassBearing.USUAL_SIGMA);
    private static final Sighting SCALE = new LevelledScale(EVENING, Angle.ofDegrees(54.2), LevelledScale.USUAL_SIGMA);

    private static StarDrift drift(double hourAngleDeg, double decDeg, double northArcsec, double sigmaArcsec) {
        ObservingMoment moment = ObservingMoment.of(LARKFELL, SkyTime.of(EVENING), WEATHER);
        var place = moment.apparent(new HourAnglePlace(Angle.ofDegrees(hourAngleDeg), Angle.ofDegrees(decDeg)));
        return new StarDrift(
                EVENING,
                Duration.ofMinutes(10),
                new FixedStar("a star", moment.catalogueDirection(place)),
                ReadLength.ofArcseconds(Math.abs(northArcsec)),
                new DriftDirection.OnSky(northArcsec >= 0),
                Angle.ofArcseconds(sigmaArcsec));
    }

    private static final StarDrift MERIDIAN = drift(-1, 0, -1, 2);
    private static final StarDrift EAST = drift(-70, 30, 1, 2);

    private static List<LoggedEvent> night(NightEvent... events) {
        List<LoggedEvent> night = new ArrayList<>();
        for (NightEvent event : events) {
            night.add(new LoggedEvent(night.size() + 1L, EVENING.plusSeconds(60L * night.size()), event));
        }
        return night;
    }

    private static NightEvent sighted(Sighting sighting) {
        return new NightEvent.SightingTaken(sighting);
    }

    private static void assertSameBitForBit(NightState actual, NightState expected) {
        assertThat(actual.fix().state().axis()).isEqualTo(expected.fix().state().axis());
        assertThat(actual.fix().state().offsetCovariance())
                .isEqualTo(expected.fix().state().offsetCovariance());
        assertThat(actual.fix().state().gains())
                .isEqualTo(expected.fix().state().gains());
        assertThat(actual.fix().agreements()).isEqualTo(expected.fix().agreements());
        assertThat(actual.advice()).isEqualTo(expected.advice());
        assertThat(actual.clamped()).isEqualTo(expected.clamped());
        assertThat(actual.allowance()).isEqualTo(expected.allowance());
    }

    /**
     * The same time for all, because the positions of stars, and so the advice, depend on the clock and not on the
     * events.
     */
    private static NightState atTheEnd(List<LoggedEvent> events) {
        return NightState.of(events, EVENING.plus(Duration.ofHours(1)), new NightState.ModelCache());
    }

    private static final List<NightEvent> EVENTFUL = List.of(
            BEGUN,
            sighted(COMPASS),
            sighted(SCALE),
            new NightEvent.ScrewsTurned(-2, 1.5),
            new NightEvent.Noted("a fox went by"),
            sighted(MERIDIAN),
            new NightEvent.AllowanceSet(new DiscAllowance(Angle.ofArcminutes(8))),
            new NightEvent.ScrewsTurned(0.5, 0),
            sighted(EAST),
            new NightEvent.Clamped(),
            sighted(MERIDIAN),
            new NightEvent.Knocked(),
            sighted(COMPASS),
            new NightEvent.Unclamped());

    @Test
    void sameEvents_giveTheSameNight() {
        List<LoggedEvent> events = night(EVENTFUL.toArray(NightEvent[]::new));
        NightState.ModelCache models = new NightState.ModelCache();
        NightState once = NightState.of(events);
        NightState growing = once;
        for (int n = 1; n <= events.size(); n++) {
            growing = NightState.of(events.subList(0, n), events.get(n - 1).at(), models);
        }

        assertSameBitForBit(NightState.of(events), once);
        assertSameBitForBit(growing, once);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14})
    void withdrawnEvent_neverHappened_bitForBit(int seq) {
        List<LoggedEvent> events = night(EVENTFUL.toArray(NightEvent[]::new));
        List<LoggedEvent> without = events.stream().filter(e -> e.seq() != seq).toList();
        List<LoggedEvent> withdrawn = new ArrayList<>(events);
        withdrawn.add(new LoggedEvent(99, EVENING, new NightEvent.Withdrawn(seq)));

        assertSameBitForBit(atTheEnd(withdrawn), atTheEnd(without));
        assertThat(NightState.of(withdrawn).standing()).isEqualTo(without);
    }

    @Test
    void withdrawingAWithdrawal_restoresTheEvent() {
        List<LoggedEvent> events = night(EVENTFUL.toArray(NightEvent[]::new));
        List<LoggedEvent> back = new ArrayList<>(events);
        back.add(new LoggedEvent(20, EVENING, new NightEvent.Withdrawn(4)));
        back.add(new LoggedEvent(21, EVENING, new NightEvent.Withdrawn(20)));
        assertSameBitForBit(NightState.of(back), NightState.of(events));

        back.add(new LoggedEvent(22, EVENING, new NightEvent.Withdrawn(21)));
        assertThat(NightState.of(back).standing()).hasSize(events.size() - 1);
    }

    /** After any withdrawals in any order, only the standing events matter. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void randomWithdrawals_leaveTheNightOfTheStandingEvents(long seed) {
        Random random = new Random(seed);
        List<LoggedEvent> events = night(EVENTFUL.toArray(NightEvent[]::new));
        for (long seq = 30; seq < 36; seq++) {
            LoggedEvent earlier = events.get(1 + random.nextInt(events.size() - 1));
            events.add(new LoggedEvent(seq, EVENING, new NightEvent.Withdrawn(earlier.seq())));
        }
        NightState state = atTheEnd(events);
        assertSameBitForBit(state, atTheEnd(state.standing()));
    }

    @Test
    void impossibleSighting_isRefused_namingItsEventNumber() {
        FixedStar star = (FixedStar) MERIDIAN.star();
        Sighting below = new StarDrift(
                EVENING.plus(Duration.ofHours(12)),
                MERIDIAN.length(),
                star,
                MERIDIAN.drift(),
                MERIDIAN.direction(),
                MERIDIAN.sigma());
        assertThatThrownBy(() -> NightState.of(night(BEGUN, sighted(COMPASS), sighted(below))))
                .isInstanceOf(InputRefused.class)
                .hasMessageStartingWith(
                        "event 3: a star was 36 degrees below the horizon at 2026-11-26T08:00:00Z. Check the"
                                + " name, the time (UTC) and the site. It would have been up if ");
    }

    @Test
    void nightWithoutABeginning_isRefused() {
        String message = "the night has no beginning. Start it with {do:begin}.";
        assertThatThrownBy(() -> NightState.of(List.of()))
                .isInstanceOf(InputRefused.class)
                .hasMessage(message);
        assertThatThrownBy(() -> NightState.of(night(sighted(COMPASS)))).hasMessage(message);
    }

    @Test
    void lastUndoable_isTheLastStandingEvent_neverTheBeginning() {
        List<LoggedEvent> events = night(BEGUN, sighted(COMPASS), sighted(SCALE));
        assertThat(NightState.of(events.subList(0, 1)).lastUndoable()).isEmpty();
        assertThat(NightState.of(events).lastUndoable()).contains(events.get(2));

        events.add(new LoggedEvent(4, EVENING, new NightEvent.Withdrawn(3)));
        assertThat(NightState.of(events).lastUndoable()).contains(events.get(1));
        events.add(new LoggedEvent(5, EVENING, new NightEvent.Withdrawn(2)));
        assertThat(NightState.of(events).lastUndoable()).isEmpty();
    }

    @Test
    void correctedTurn_takesThePlaceOfTheWrongOne_beforeLaterSightings() {
        NightEvent wrong = new NightEvent.ScrewsTurned(-1.75, 0.5);
        NightEvent.ScrewsTurned right = new NightEvent.ScrewsTurned(1.75, 0.5);
        List<LoggedEvent> events =
                night(BEGUN, sighted(COMPASS), sighted(SCALE), wrong, sighted(MERIDIAN), sighted(EAST));
        List<LoggedEvent> asItWas =
                night(BEGUN, sighted(COMPASS), sighted(SCALE), right, sighted(MERIDIAN), sighted(EAST));
        NightState before = atTheEnd(events);

        events.add(new LoggedEvent(7, EVENING, new Correction.TurnCorrected(4, right)));
        assertSameBitForBit(atTheEnd(events), atTheEnd(asItWas));
        assertThat(NightState.of(events).standing()).isEqualTo(asItWas);
        assertThat(NightState.of(events).lastUndoable()).contains(events.get(6));

        events.add(new LoggedEvent(8, EVENING, new Correction.TurnCorrected(4, new NightEvent.ScrewsTurned(1, 1))));
        events.add(new LoggedEvent(9, EVENING, new NightEvent.Withdrawn(8)));
        assertSameBitForBit(atTheEnd(events), atTheEnd(asItWas));
        events.add(new LoggedEvent(10, EVENING, new NightEvent.Withdrawn(7)));
        assertSameBitForBit(atTheEnd(events), before);
    }

    @Test
    void turnCorrection_appliesOnlyToTurns() {
        List<LoggedEvent> events =
                night(BEGUN, sighted(COMPASS), new Correction.TurnCorrected(2, new NightEvent.ScrewsTurned(1, 0)));
        assertThatThrownBy(() -> NightState.of(events))
                .isInstanceOf(InputRefused.class)
                .hasMessage("event 2 is not a turn of the screws, so no turn can replace it. Give the number of a turn,"
                        + " as the log shows it.");
    }

    @Test
    void allowance_changesTheAdvice_notTheFix() {
        NightEvent[] good = {BEGUN, sighted(COMPASS), sighted(SCALE), sighted(MERIDIAN), sighted(EAST)};
        List<LoggedEvent> events = night(good);
        NightState visual = NightState.of(events);
        assertThat(visual.advice()).isInstanceOf(Advice.Clamp.class);

        DiscAllowance strict = new DiscAllowance(Angle.ofArcminutes(0.3));
        events.add(new LoggedEvent(6, EVENING, new NightEvent.AllowanceSet(strict)));
        NightState camera = NightState.of(events);
        assertThat(camera.allowance()).isEqualTo(strict);
        assertThat(camera.advice()).isNotInstanceOf(Advice.Clamp.class);
        assertThat(camera.advice().probabilityNow()).isLessThan(visual.advice().probabilityNow());
        assertThat(camera.fix().state().axis()).isEqualTo(visual.fix().state().axis());

        events.add(new LoggedEvent(7, EVENING, new NightEvent.Withdrawn(6)));
        assertSameBitForBit(NightState.of(events), visual);
    }

    @Test
    void clamping_isConfirmedByAnAgreeingSighting() {
        List<LoggedEvent> events = night(
                BEGUN, sighted(COMPASS), sighted(SCALE), sighted(MERIDIAN), sighted(EAST), new NightEvent.Clamped());
        assertThat(NightState.of(events).clamped()).isTrue();
        assertThat(NightState.of(events).advice()).isInstanceOf(Advice.TakeSighting.class);

        events.add(new LoggedEvent(7, EVENING, sighted(MERIDIAN)));
        assertThat(NightState.of(events).advice()).isInstanceOf(Advice.Stop.class);

        events.add(new LoggedEvent(8, EVENING, new NightEvent.ScrewsTurned(0.25, 0)));
        assertThat(NightState.of(events).clamped()).isFalse();
    }

    /** Screws cannot be turned against tight clamps, so the clamps were loosened, and that moves the axis a little. */
    @Test
    void turnWithClampsTight_isAsUncertainAsAfterLoosening() {
        NightEvent turn = new NightEvent.ScrewsTurned(0.5, 0);
        NightState loosenedFirst = atTheEnd(night(
                BEGUN, sighted(MERIDIAN), sighted(EAST), new NightEvent.Clamped(), new NightEvent.Unclamped(), turn));
        NightState turnedAtOnce =
                atTheEnd(night(BEGUN, sighted(MERIDIAN), sighted(EAST), new NightEvent.Clamped(), turn));

        assertThat(turnedAtOnce.clamped()).isFalse();
        assertThat(turnedAtOnce.fix().state().offsetCovariance())
                .isEqualTo(loosenedFirst.fix().state().offsetCovariance());
        assertThat(turnedAtOnce.fix().state().offsetCovariance().largestSigma())
                .isGreaterThan(atTheEnd(night(BEGUN, sighted(MERIDIAN), sighted(EAST), turn))
                        .fix()
                        .state()
                        .offsetCovariance()
                        .largestSigma());
    }

    /** The experience with the clamps applies to loosening as to tightening, and the advice uses the same values. */
    @Test
    void loosening_scattersTheAxisByThePastExperience() {
        Angle learned = Angle.ofArcminutes(4);
        Rig rig = Rig.typicalForkOnWedge()
                .withExperience(Optional.of(new Experience(3, 1, 0.05, 1, 0.05, 4, AxisOffset.NONE, learned)));
        NightEvent begun = new NightEvent.Begun("Larkfell", LARKFELL, WEATHER, rig, DiscAllowance.VISUAL);
        List<LoggedEvent> seen = night(begun, sighted(MERIDIAN), sighted(EAST), new NightEvent.Clamped());
        List<LoggedEvent> loosened = new ArrayList<>(seen);
        loosened.add(new LoggedEvent(5, EVENING.plusSeconds(300), new NightEvent.Unclamped()));

        double before = NightState.of(seen).fix().state().offsetCovariance().upUpArcmin2();
        double after = NightState.of(loosened).fix().state().offsetCovariance().upUpArcmin2();

        assertThat(after - before).isCloseTo(16, within(0.1));
    }

    /**
     * 10 minutes at 60″ correspond to an offset of 23′: the drift after clamping shows that the mount has moved far.
     */
    @Test
    void clamping_isNotConfirmedByAnOutlier_andTheNightGoesOn() {
        List<LoggedEvent> events = night(
                BEGUN,
                sighted(COMPASS),
                sighted(SCALE),
                sighted(MERIDIAN),
                sighted(EAST),
                sighted(MERIDIAN),
                new NightEvent.Clamped(),
                sighted(drift(-1, 0, 60, 2)));

        NightState after = NightState.of(events);
        assertThat(after.advice()).isInstanceOf(Advice.TakeSighting.class);

        // After a knock is noted, the night continues with later sightings.
        events.add(new LoggedEvent(9, EVENING, new NightEvent.Withdrawn(8)));
        events.add(new LoggedEvent(10, EVENING, new NightEvent.Knocked()));
        assertThat(NightState.of(events).fix()).isInstanceOf(Fix.Underdetermined.class);
        assertThat(NightState.of(events).clamped()).isTrue();
        events.add(new LoggedEvent(11, EVENING, sighted(drift(-1, 0, 60, 2))));
        events.add(new LoggedEvent(12, EVENING, sighted(EAST)));
        NightState moved = NightState.of(events);
        assertThat(moved.fix()).isInstanceOf(Fix.Solved.class);
        assertThat(moved.fix().state().offset().east().arcminutes()).isBetween(-26.0, -20.0);
        assertThat(moved.advice()).isInstanceOf(Advice.TurnScrews.class);
        assertThat(((Advice.TurnScrews) moved.advice()).loosenFirst()).isTrue();
    }
}
