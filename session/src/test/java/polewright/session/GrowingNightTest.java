package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.fix.Agreement;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.mount.rig.Rig;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * A night computed event by event, with cached results of earlier calls, against the same night computed from its
 * beginning.
 */
class GrowingNightTest {
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    private static final int EVENTS = 100;
    private static final NightEvent BEGUN = new NightEvent.Begun(
            "Larkfell",
            Site.ofDegrees(54.60, -2.90, 240),
            Weather.standardAt(240),
            Rig.typicalForkOnWedge(),
            DiscAllowance.VISUAL);
    // High at Larkfell all that night.
    private static final FixedStar CAPELLA =
            new FixedStar("Capella", CatalogueStar.fixed(Angle.ofDegrees(79.17), Angle.ofDegrees(46.0)));

    private final List<LoggedEvent> events = new ArrayList<>();
    private final Random random = new Random(5);

    private void add(NightEvent event) {
        events.add(new LoggedEvent(events.size() + 1L, now(), event));
    }

    private Instant now() {
        return EVENING.plus(Duration.ofMinutes(3L * events.size()));
    }

    private void addAny() {
        LoggedEvent last = events.get(events.size() - 1);
        switch (random.nextInt(13)) {
            case 0 ->
                sighted(new CompassBearing(
                        now(),
                        Angle.ofDegrees(2 + random.nextGaussian()),
                        Angle.ofDegrees(-1),
                        CompassBearing.USUAL_SIGMA));
            case 1 ->
                sighted(new LevelledScale(
                        now(), Angle.ofDegrees(54.5 + random.nextGaussian() / 2), LevelledScale.USUAL_SIGMA));
            case 2, 3, 4, 5 ->
                sighted(new StarDrift(
                        now(),
                        Duration.ofMinutes(6),
                        CAPELLA,
                        ReadLength.ofArcseconds(Math.abs(20 * random.nextGaussian())),
                        new DriftDirection.OnSky(random.nextBoolean()),
                        Angle.ofArcseconds(40)));
            case 6 -> add(new NightEvent.ScrewsTurned(0.5, random.nextBoolean() ? 0 : -0.25));
            case 7 -> add(random.nextBoolean() ? new NightEvent.Clamped() : new NightEvent.Unclamped());
            case 8 -> add(random.nextInt(4) == 0 ? new NightEvent.Knocked() : new NightEvent.Noted("dew"));
            case 9 -> add(new NightEvent.AllowanceSet(new DiscAllowance(Angle.ofArcminutes(3 + random.nextInt(9)))));
            case 10 -> add(new NightEvent.Withdrawn(1L + 1 + random.nextInt(events.size())));
            case 11 ->
                add(
                        last.event() instanceof NightEvent.ScrewsTurned
                                ? new Correction.TurnCorrected(last.seq(), new NightEvent.ScrewsTurned(-0.5, 0))
                                : new NightEvent.Noted("no turn to correct"));
            default ->
                add(
                        random.nextInt(3) == 0
                                ? new Correction.ClockCorrected(2, 2, Duration.ofMinutes(1 + random.nextInt(8)))
                                : new NightEvent.Noted("cloud"));
        }
    }

    private void sighted(Sighting sighting) {
        add(new NightEvent.SightingTaken(sighting));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void eventByEvent_equalsComputingFromTheBeginning(long seed) {
        random.setSeed(seed);
        add(BEGUN);
        NightState.ModelCache kept = new NightState.ModelCache();
        while (events.size() < EVENTS) {
            addAny();
            if (random.nextInt(5) == 0) {
                // As if the night before its last events were requested.
                NightState.of(events.subList(0, 1 + random.nextInt(events.size())), now(), kept);
            }
            NightState grown = NightState.of(List.copyOf(events), now(), kept);
            if (events.size() % 7 == 0) {
                assertSame(grown, NightState.of(events, now(), new NightState.ModelCache()));
            }
        }
    }

    private void assertSame(NightState grown, NightState fromScratch) {
        String when = "after " + events.size() + " events";
        assertThat(grown.standing()).as(when).isEqualTo(fromScratch.standing());
        assertThat(grown.lastUndoable()).as(when).isEqualTo(fromScratch.lastUndoable());
        assertThat(grown.allowance()).as(when).isEqualTo(fromScratch.allowance());
        assertThat(grown.clamped()).as(when).isEqualTo(fromScratch.clamped());
        assertThat(grown.situation().sinceClamp())
                .as(when)
                .isEqualTo(fromScratch.situation().sinceClamp());
        assertThat(grown.situation().alreadyRead())
                .as(when)
                .isEqualTo(fromScratch.situation().alreadyRead());
        assertThat(grown.fix().getClass()).as(when).isEqualTo(fromScratch.fix().getClass());
        assertThat(grown.fix()
                        .state()
                        .offset()
                        .minus(fromScratch.fix().state().offset())
                        .distance()
                        .arcseconds())
                .as(when)
                .isCloseTo(0, within(1e-3));
        assertThat(grown.fix().agreements())
                .as(when)
                .extracting(Agreement::seq, Agreement::contradictory)
                .isEqualTo(fromScratch.fix().agreements().stream()
                        .map(a -> tuple(a.seq(), a.contradictory()))
                        .toList());
        assertThat(grown.advice().getClass())
                .as(when)
                .isEqualTo(fromScratch.advice().getClass());
    }

    /** An impossible sighting is refused, and leaves no trace in the cache. */
    @Test
    void refusedEvent_doesNotCountWhenTheNightContinues() {
        add(BEGUN);
        sighted(new LevelledScale(now(), Angle.ofDegrees(54.5), LevelledScale.USUAL_SIGMA));
        NightState.ModelCache kept = new NightState.ModelCache();
        NightState.of(events, now(), kept);
        FixedStar belowTheHorizon =
                new FixedStar("Canopus", CatalogueStar.fixed(Angle.ofDegrees(95.99), Angle.ofDegrees(-52.7)));
        List<LoggedEvent> refused = new ArrayList<>(events);
        refused.add(new LoggedEvent(
                3,
                now(),
                new NightEvent.SightingTaken(new StarDrift(
                        now(),
                        Duration.ofMinutes(6),
                        belowTheHorizon,
                        ReadLength.ofArcseconds(4),
                        new DriftDirection.OnSky(true),
                        Angle.ofArcseconds(6)))));
        assertThatThrownBy(() -> NightState.of(refused, now(), kept))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("event 3");
        add(new NightEvent.ScrewsTurned(1, 0));
        assertSame(NightState.of(events, now(), kept), NightState.of(events, now(), new NightState.ModelCache()));
    }

    /** n readings of one scale share its error and count as one; many never count as more than one. */
    @ParameterizedTest
    @CsvSource({"1, 1", "2, 2", "8, 8", "9, 16", "16, 16", "17, 32", "33, 64"})
    void manyReadingsOfOneScale_neverCountAsMoreThanOne(int readings, int shared) {
        add(BEGUN);
        for (int i = 0; i < readings; i++) {
            sighted(new LevelledScale(now(), Angle.ofDegrees(54.5), LevelledScale.USUAL_SIGMA));
        }
        assertThat(SharedInstrumentErrors.of(events).readings().values())
                .hasSize(readings)
                .containsOnly(shared);
        double sigma =
                NightState.of(events).fix().state().offsetCovariance().sigmaUp().degrees();
        double one = LevelledScale.USUAL_SIGMA.degrees();
        assertThat(sigma).isCloseTo(one * Math.sqrt(shared / (double) readings), within(0.03));
    }
}
