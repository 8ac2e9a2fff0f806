package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.ScrewSenses;
import polewright.alignment.sighting.BodyBearing;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.session.RigHistory;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Site;

/** What is learned about a mount from several nights, with a new set-up each time. */
class RigHistoryTest {
    private static final Rig RIG = Rig.typicalForkOnWedge();
    private static final Rig SENSE_STATED = RIG.withScrews(
            RIG.azimuthScrew().withSenseConfirmed(), RIG.altitudeScrew().withSenseConfirmed(), RIG.levelSigma());
    private static final AxisOffset CLAMP_SHIFT = AxisOffset.ofArcminutes(0.8, -2);
    private static final Angle CLAMP_SIGMA = Angle.ofArcminutes(0.3);
    private static final Site NORTH = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site SOUTH = Site.ofDegrees(-43.95, 170.40, 710);
    private static final double AZIMUTH_FACTOR = 1.12;
    private static final double ALTITUDE_FACTOR = 0.9;

    /** Turned twice and clamped, measured by camera before and after each; the base has a new tilt. */
    private static PractisedWedge night(long seed, Rig writtenDown) {
        return night(seed, writtenDown, CLAMP_SHIFT);
    }

    private static PractisedWedge night(long seed, Rig writtenDown, AxisOffset shift) {
        RandomGenerator random = PractisedWedge.random(seed);
        Site site = PractisedWedge.site(seed, random);
        HiddenWedge wedge = PractisedWedge.withFactors(
                HiddenWedge.of(site, writtenDown, PractisedWedge.offset(1, 3, random), random),
                AZIMUTH_FACTOR,
                ALTITUDE_FACTOR);
        return new PractisedWedge(wedge, random)
                .seenByCamera()
                .turnedToThePole()
                .seenByCamera()
                .turnedToThePole()
                .seenByCamera()
                .clamped(shift, CLAMP_SIGMA)
                .seenByCamera();
    }

    private static List<List<LoggedEvent>> nights(int count, long firstSeed, Rig rig) {
        return IntStream.range(0, count)
                .mapToObj(i -> night(firstSeed + 2L * i, rig).events())
                .toList();
    }

    @ParameterizedTest
    @ValueSource(longs = {100, 201})
    void severalNights_teachTheScrewsAndTheClamps_inBothHemispheres(long firstSeed) {
        Experience learned = learned(nights(6, firstSeed, RIG), RIG, firstSeed % 2 == 0 ? NORTH : SOUTH);

        assertThat(learned.nights()).isEqualTo(6);
        assertThat(learned.clampings()).isEqualTo(6);
        assertThat(learned.azimuthFactor()).isCloseTo(AZIMUTH_FACTOR, within(0.04));
        assertThat(learned.altitudeFactor()).isCloseTo(ALTITUDE_FACTOR, within(0.04));
        assertThat(learned.azimuthSigma()).isLessThan(0.05);
        assertThat(learned.altitudeSigma()).isLessThan(0.04);
        assertThat(learned.clampShift().east().arcminutes()).isCloseTo(0.8, within(0.4));
        assertThat(learned.clampShift().up().arcminutes()).isCloseTo(-2, within(0.4));
        assertThat(learned.clampSigma().arcminutes()).isBetween(0.2, 1.0);
    }

    /** An observer facing the elevated pole has east on the right in the north, and on the left in the south. */
    @Test
    void clampsPushingRight_moveTheAxisEastInTheNorthAndWestInTheSouth() {
        List<List<LoggedEvent>> nights = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            nights.add(night(150 + 2L * i, RIG, AxisOffset.ofArcminutes(3, -2)).events());
            nights.add(night(151 + 2L * i, RIG, AxisOffset.ofArcminutes(-3, -2)).events());
        }

        Experience north = learned(nights, RIG);
        Experience south = learned(nights, RIG, SOUTH);

        assertThat(north.clampShift().east().arcminutes()).isCloseTo(3, within(0.5));
        assertThat(south.clampShift().east().arcminutes()).isCloseTo(-3, within(0.5));
        assertThat(north.clampShift().up().arcminutes()).isCloseTo(-2, within(0.4));
        assertThat(south.clampShift().up()).isEqualTo(north.clampShift().up());
        assertThat(north.clampings()).isEqualTo(6);
        assertThat(north.clampSigma()).isEqualTo(south.clampSigma());
        // Not the scatter of two directions mistaken for one.
        assertThat(north.clampSigma().arcminutes()).isLessThan(1);
    }

    @Test
    void oneNight_teachesTheScrewsButLeavesTheClampsMuchToTheRig() {
        Experience learned = learned(nights(1, 300, RIG), RIG);

        assertThat(learned.azimuthFactor()).isCloseTo(AZIMUTH_FACTOR, within(0.08));
        assertThat(learned.azimuthSigma()).isLessThan(0.1);
        assertThat(learned.clampShift().up().arcminutes()).isBetween(-2.0, -0.3);
        assertThat(learned.clampSigma().arcminutes()).isBetween(0.6, 1.5);
    }

    /** Experience carried over from earlier nights is not counted again. */
    @Test
    void experienceOfEarlierNights_doesNotChangeWhatANightTeaches() {
        List<List<LoggedEvent>> nights = nights(3, 400, RIG);
        Experience learned = learned(nights, RIG);
        Rig experienced = RIG.withExperience(Optional.of(learned));
        List<List<LoggedEvent>> again =
                nights.stream().map(night -> begunWith(night, experienced)).toList();

        assertThat(learned(again, experienced)).isEqualTo(learned);
    }

    @Test
    void otherRigsAndOtherScrewsOfThatName_teachNothing() {
        Rig other = named("tracker");
        Screw finer = new Screw(new ScrewGeometry.PushScrew(1, 200), ScrewSense.RIGHT, 0.15, 0.05, 0.1);
        Rig rebuilt = RIG.withScrews(finer, RIG.altitudeScrew(), RIG.levelSigma());
        Screw turned = new Screw(RIG.azimuthScrew().geometry(), ScrewSense.LEFT, 0.15, 0.05, 0.1);
        Rig mirrored = RIG.withScrews(turned, RIG.altitudeScrew(), RIG.levelSigma());
        List<List<LoggedEvent>> nights = new ArrayList<>(nights(1, 500, other));
        nights.addAll(nights(1, 510, rebuilt));
        nights.addAll(nights(1, 520, mirrored));

        assertThat(RigHistory.withExperience(nights, SENSE_STATED, NORTH)).isEqualTo(SENSE_STATED);
        assertThat(learned(nights, rebuilt).nights()).isEqualTo(1);
    }

    @Test
    void screwIdentity_ignoresTheirUncertainty() {
        Screw known = new Screw(RIG.azimuthScrew().geometry(), ScrewSense.RIGHT, 0.05, 0.02, 0.3);
        Rig better = RIG.withScrews(known, RIG.altitudeScrew(), Angle.ofDegrees(0.5));

        assertThat(learned(nights(2, 600, RIG), better).nights()).isEqualTo(2);
    }

    @Test
    void withdrawnTurnsAndClampings_teachNothing() {
        PractisedWedge night = night(700, RIG);
        List<Long> moves = night.events().stream()
                .filter(e -> e.event() instanceof NightEvent.ScrewsTurned || e.event() instanceof NightEvent.Clamped)
                .map(LoggedEvent::seq)
                .toList();
        List<Long> sightings = night.events().stream()
                .filter(e -> e.event() instanceof NightEvent.SightingTaken)
                .map(LoggedEvent::seq)
                .toList();
        moves.forEach(seq -> night.log(new NightEvent.Withdrawn(seq)));
        sightings.subList(1, sightings.size()).forEach(seq -> night.log(new NightEvent.Withdrawn(seq)));

        assertThat(RigHistory.withExperience(List.of(night.events()), RIG, NORTH))
                .isEqualTo(RIG);
    }

    @Test
    void unsolvableNights_areSkipped() {
        List<LoggedEvent> good = night(800, RIG).events();
        // Its beginning is missing.
        List<LoggedEvent> headless = good.subList(1, good.size());
        // A shadow of the Sun, at night.
        PractisedWedge damaged = night(802, RIG);
        damaged.log(new NightEvent.SightingTaken(new BodyBearing(
                good.get(0).at(),
                SolarSystemBody.SUN,
                BodyBearing.Line.SHADOW,
                Angle.ofDegrees(10),
                BodyBearing.USUAL_SIGMA)));
        assertThatThrownBy(damaged::night).isInstanceOf(InputRefused.class);
        List<List<LoggedEvent>> nights = List.of(List.of(), headless, damaged.events(), good);

        Experience learned = learned(nights, RIG);

        assertThat(learned.nights()).isEqualTo(1);
        assertThat(learned.azimuthFactor()).isCloseTo(AZIMUTH_FACTOR, within(0.08));
        assertThat(RigHistory.withExperience(List.of(List.of(), headless), RIG, NORTH))
                .isEqualTo(RIG);
    }

    private static PractisedWedge nightWithTheAzimuthScrewReversed(long seed, Rig rig) {
        RandomGenerator random = PractisedWedge.random(seed);
        HiddenWedge wedge =
                HiddenWedge.of(PractisedWedge.site(seed, random), rig, PractisedWedge.offset(1, 3, random), random);
        PractisedWedge night =
                new PractisedWedge(wedge, random).seenByCamera().seenByCamera().turnedToThePole();
        List<LoggedEvent> events = night.events();
        NightEvent.ScrewsTurned turned =
                (NightEvent.ScrewsTurned) events.get(events.size() - 1).event();
        night.log(new NightEvent.Withdrawn(events.size()))
                .log(new NightEvent.ScrewsTurned(-turned.azimuthTurns(), turned.altitudeTurns()))
                .seenByCamera()
                .seenByCamera();
        return night;
    }

    /** If the sense of a screw is an assumption, one night settles it for all that follow. */
    @Test
    void reversedScrew_isKnownOnTheNextNight() {
        PractisedWedge night = nightWithTheAzimuthScrewReversed(850, RIG);
        assertThat(night.night().fix()).isInstanceOf(Fix.Solved.class);
        assertThat(night.night().fix().rig().azimuthScrew())
                .isEqualTo(RIG.azimuthScrew().reversed());

        Rig next = RigHistory.withExperience(List.of(night.events()), RIG, NORTH);

        assertThat(next.azimuthScrew()).isEqualTo(RIG.azimuthScrew().reversed());
        assertThat(next.altitudeScrew()).isEqualTo(RIG.altitudeScrew());
        ScrewSenses senses = ScrewSenses.before(next);
        assertThat(senses.isAzimuthKnown()).isTrue();
        assertThat(senses.isAltitudeKnown()).isTrue();
        assertThat(next.experience().orElseThrow().azimuthFactor()).isBetween(0.6, 1.4);
    }

    /** A mount may have been taken apart: later nights are distinguished from earlier ones only by what they show. */
    @Test
    void screwReversedLater_isRelearnedByTheSecondNight() {
        List<List<LoggedEvent>> nights = new ArrayList<>(nights(5, 870, RIG));
        nights.add(later(nightWithTheAzimuthScrewReversed(880, RIG).events(), 1));
        double afterOne = ScrewSenses.before(RigHistory.withExperience(nights, RIG, NORTH))
                .azimuth();
        assertThat(afterOne).as("either is possible").isBetween(0.45, 0.55);
        nights.add(0, later(nightWithTheAzimuthScrewReversed(882, RIG).events(), 2));

        Rig next = RigHistory.withExperience(nights, RIG, NORTH);

        assertThat(next.azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        assertThat(ScrewSenses.before(next).isAzimuthKnown()).isTrue();
    }

    /** The owner's statement about a screw outweighs what earlier nights have shown. */
    @Test
    void statedSense_isNotTakenFromEarlierNights() {
        List<List<LoggedEvent>> nights =
                List.of(nightWithTheAzimuthScrewReversed(860, RIG).events());
        Rig half = RIG.withScrews(RIG.azimuthScrew().withSenseConfirmed(), RIG.altitudeScrew(), RIG.levelSigma());

        assertThat(RigHistory.withExperience(nights, SENSE_STATED, NORTH)).isEqualTo(SENSE_STATED);
        assertThat(RigHistory.withExperience(nights, half, NORTH).azimuthScrew())
                .isEqualTo(half.azimuthScrew());
        assertThat(ScrewSenses.before(half)).isEqualTo(new ScrewSenses(1, 0.5));
    }

    /** If the owner stated the sense of a screw, a night in which it went the other way belongs to another mount. */
    @Test
    void nightsContradictingTheStatedSense_areSkipped() {
        PractisedWedge night = nightWithTheAzimuthScrewReversed(850, SENSE_STATED);

        assertThat(RigHistory.withExperience(List.of(night.events()), SENSE_STATED, NORTH))
                .isEqualTo(SENSE_STATED);
    }

    private static List<LoggedEvent> later(List<LoggedEvent> night, int days) {
        return night.stream()
                .map(logged -> new LoggedEvent(logged.seq(), logged.at().plus(Duration.ofDays(days)), logged.event()))
                .toList();
    }

    private static Experience learned(List<List<LoggedEvent>> nights, Rig rig) {
        return learned(nights, rig, NORTH);
    }

    private static Experience learned(List<List<LoggedEvent>> nights, Rig rig, Site tonight) {
        return RigHistory.withExperience(nights, rig, tonight).experience().orElseThrow();
    }

    @Test
    void clampingWithoutASightingAfterwards_teachesNothing() {
        RandomGenerator random = PractisedWedge.random(900);
        HiddenWedge wedge =
                HiddenWedge.of(PractisedWedge.site(900, random), RIG, PractisedWedge.offset(1, 3, random), random);
        PractisedWedge night = new PractisedWedge(wedge, random).seenByCamera().clamped(CLAMP_SHIFT, CLAMP_SIGMA);

        assertThat(RigHistory.withExperience(List.of(night.events()), RIG, NORTH))
                .isEqualTo(RIG);
    }

    private static List<LoggedEvent> begunWith(List<LoggedEvent> night, Rig rig) {
        NightEvent.Begun begun = (NightEvent.Begun) night.get(0).event();
        List<LoggedEvent> other = new ArrayList<>(night);
        other.set(
                0,
                new LoggedEvent(
                        1,
                        night.get(0).at(),
                        new NightEvent.Begun(begun.siteName(), begun.site(), begun.weather(), rig, begun.allowance())));
        return other;
    }

    private static Rig named(String name) {
        return new Rig(
                name,
                RIG.kind(),
                RIG.azimuthScrew(),
                RIG.altitudeScrew(),
                RIG.levelSigma(),
                RIG.clampSigma(),
                RIG.optics());
    }
}
