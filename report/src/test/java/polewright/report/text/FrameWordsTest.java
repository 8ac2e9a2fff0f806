package polewright.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.camera.Drive;
import polewright.alignment.camera.FrameDisturbance;
import polewright.alignment.camera.FrameExplanations;
import polewright.alignment.camera.FrameFinding;
import polewright.alignment.camera.InferredDrive;
import polewright.alignment.camera.PeriodicError;
import polewright.alignment.camera.TrackedSequence;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.body.FixedStar;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Messages about frames, for a cold and tired reader. */
class FrameWordsTest {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");

    private static TurnedFrames frames(Instant from, boolean after, double... turnsDeg) {
        List<CameraAttitude> frames = new ArrayList<>();
        Vector3D axis = AxisPointing.atPole(LARKFELL).elevatedEnd();
        for (double turn : turnsDeg) {
            frames.add(CameraAttitude.of(
                    from.plusSeconds(60L * frames.size()),
                    new Rotation(axis, Math.toRadians(turn), RotationConvention.VECTOR_OPERATOR),
                    RotationCovariance.ofSigmas(Angle.ofArcseconds(1), Angle.ofArcseconds(20))));
        }
        int kept = after ? frames.size() - 1 : frames.size();
        return new TurnedFrames(
                frames.subList(0, kept), after ? Optional.of(frames.get(kept)) : Optional.empty(), Drive.NOT_TOLD);
    }

    @Test
    void frames_areDescribedInOneLine() {
        assertThat(EventWords.of(new NightEvent.SightingTaken(frames(EVENING, false, 0, 30, 61.5))))
                .isEqualTo("3 camera frames, right ascension turned 61.5°");
        assertThat(EventWords.of(new NightEvent.SightingTaken(frames(EVENING, true, 0, 60, 60))))
                .isEqualTo("2 camera frames, right ascension turned 60.0°, and one more after the screws were turned");
    }

    @Test
    void fieldDrift_isDescribedInOneLine() {
        FieldDrift drift = new FieldDrift(
                EVENING,
                Duration.ofSeconds(750),
                Angle.ofDegrees(83.8),
                Angle.ofDegrees(-5.4),
                Angle.ofArcseconds(-14.2),
                Angle.ofArcseconds(6.54),
                Angle.ofArcseconds(0.4),
                Angle.ofArcseconds(2));
        assertThat(EventWords.of(new NightEvent.SightingTaken(drift)))
                .isEqualTo("drift of a field: 14″ south and 6.5″ east in 12.5 minutes");
    }

    @Test
    void loggedFrames_haveFindings_otherEventsHaveNone() {
        assertThat(FrameWords.notes(new NightEvent.SightingTaken(frames(EVENING, false, 0, 60)), LARKFELL))
                .extracting(Remark::line)
                .containsExactly("NOTE  two frames always fit some axis, so nothing checks them. A third, with right"
                        + " ascension turned further, would show whether the mount, declination or the"
                        + " camera moved.");
        assertThat(FrameWords.notes(
                        new NightEvent.SightingTaken(frames(EVENING.minusSeconds(8 * 3600), false, 0, 30, 60)),
                        LARKFELL))
                .hasSize(3)
                .first()
                .extracting(Remark::line)
                .asString()
                .startsWith("NOTE  at the time of frame 1 the Sun was at 14")
                .endsWith("°, so no stars could be seen. Check the clock, its zone and the site.");
        assertThat(FrameWords.notes(new NightEvent.Clamped(), LARKFELL)).isEmpty();
    }

    private static FrameExplanations.Explanation explained(
            FrameDisturbance.Kind kind, int frame, double probability, double arcmin) {
        return new FrameExplanations.Explanation(
                new FrameDisturbance(kind, frame),
                probability,
                AxisPointing.atPole(LARKFELL),
                Angle.ofArcminutes(arcmin));
    }

    static Stream<Arguments> findings() {
        return Stream.of(
                Arguments.of(
                        new FrameFinding.SmallTurn(Angle.ofDegrees(9)),
                        "right ascension was turned by only 9.0°. Turn by 30 to 90 degrees for a more accurate axis."),
                Arguments.of(
                        new FrameFinding.Disturbed(
                                new FrameExplanations.Suspect(3, false),
                                List.of(
                                        explained(FrameDisturbance.Kind.MOUNT_BUMPED, 3, 0.71, 15),
                                        explained(FrameDisturbance.Kind.CAMERA_SLIPPED, 3, 0.22, 15))),
                        "something moved between frames 2 and 3. Likely causes: the mount was bumped by 15′ between"
                                + " frames 2 and 3 (71 %); the camera slipped or rolled by 15′ between frames 2 and 3"
                                + " (22 %). The axis and its uncertainty allow for that. To be sure, take the frames"
                                + " again."),
                Arguments.of(
                        new FrameFinding.Disturbed(
                                new FrameExplanations.Suspect(2, true),
                                List.of(explained(FrameDisturbance.Kind.TIME_WRONG, 2, 0.97, 75.205))),
                        "frame 2 does not fit the others. Likely cause: the time of frame 2 is wrong by"
                                + " 5\u00a0minutes (97 %)."
                                + " The axis and its uncertainty allow for that. Check the clock of the camera."),
                Arguments.of(
                        new FrameFinding.DoesNotClose(
                                3,
                                Angle.ofArcseconds(41),
                                List.of(
                                        explained(FrameDisturbance.Kind.DECLINATION_MOVED, 2, 0.4, 6),
                                        explained(FrameDisturbance.Kind.BUMPED_WHILE_EXPOSED, 1, 0.3, 6),
                                        explained(FrameDisturbance.Kind.GIVE, 0, 0.2, 0))),
                        "the 3 frames do not agree on one axis: one is off by 41″, and 3 frames cannot show which."
                                + " Likely"
                                + " causes: declination moved by 6.0′ between frames 1 and 2 (40 %); the mount was"
                                + " bumped"
                                + " while frame 1 was exposed (30 %); fork, tube and camera flex a little between"
                                + " frames"
                                + " (20 %). The uncertainty covers each of these. Turn right ascension further and"
                                + " take one more frame."),
                Arguments.of(
                        new FrameFinding.NotRigid(Angle.ofArcseconds(18), 3, 4.2),
                        "the frames disagree by up to 18″ (frame 3), 4.2 times their own uncertainties: fork, tube"
                                + " or camera flexes a little. The uncertainty of the axis allows for that."),
                Arguments.of(
                        new FrameFinding.BelowHorizon(1, Angle.ofDegrees(-21)),
                        "the field of frame 1 was 21.0° below the horizon at its time. Check the clock, its zone and"
                                + " the site."),
                Arguments.of(
                        new FrameFinding.FarApartInTime(Duration.ofMinutes(200)),
                        "the frames span 3.3 hours, long enough for a mount to settle. Take them within minutes."),
                Arguments.of(
                        new FrameFinding.FarFromPole(Angle.ofDegrees(44)),
                        "the axis would point 44.0° from the pole. Check the clock and the site, and that nothing"
                                + " but right ascension was turned."),
                Arguments.of(
                        new FrameFinding.NeitherTracksNorStands(1, Angle.ofArcminutes(7), Angle.ofArcminutes(15)),
                        "after frame 1 the mount turned 7.0′ while the sky turned 15′. It was neither stopped nor"
                                + " tracking. Check the clock and the drive rate."),
                Arguments.of(
                        new FrameFinding.DriveNotAsTold(Drive.TRACKING, Drive.STANDING),
                        "the drive was off, not tracking as given. The axis does not depend on it."),
                Arguments.of(
                        new FrameFinding.RightAscensionTurned(Angle.ofDegrees(-5)),
                        "right ascension turned by 5.0° east as well, or the camera rolled. The first does no harm;"
                                + " after the second, start again."),
                Arguments.of(
                        new FrameFinding.MovedTooFar(Angle.ofDegrees(14)),
                        "the axis is 14.0° from where it was found, farther than most wedges go. If the screws moved"
                                + " it there, turn them back; if declination or the mount was moved, take two new"
                                + " frames."));
    }

    @ParameterizedTest
    @MethodSource("findings")
    void finding_saysWhatIsWrongAndWhatToDo(FrameFinding finding, String words) {
        assertThat(FrameWords.of(finding)).isEqualTo(words);
    }

    @Test
    void everyKindOfFinding_hasText() {
        List<Class<?>> result = new ArrayList<>(findings()
                .map(arguments -> (Class<?>) arguments.get()[0].getClass())
                .distinct()
                .toList());
        // These two are covered through logged frames above.
        result.add(FrameFinding.Unchecked.class);
        result.add(FrameFinding.SunTooHigh.class);
        assertThat(result)
                .containsExactlyInAnyOrderElementsOf(Arrays.asList(FrameFinding.class.getPermittedSubclasses()));
    }

    /** Three sightings agree; frames from a very different axis do not. */
    @Test
    void framesThatContradictTheRest_nameWhatToCheckInFrames() {
        NightEvent begun = new NightEvent.Begun(
                "Larkfell", LARKFELL, Weather.standardAt(240), Rig.typicalForkOnWedge(), DiscAllowance.VISUAL);
        Angle tight = Angle.ofDegrees(0.5);
        List<NightEvent> events = List.of(
                begun,
                new NightEvent.SightingTaken(new CompassBearing(EVENING, Angle.ofDegrees(8), Angle.ZERO, tight)),
                new NightEvent.SightingTaken(new CompassBearing(EVENING, Angle.ofDegrees(8), Angle.ZERO, tight)),
                new NightEvent.SightingTaken(new LevelledScale(EVENING, Angle.ofDegrees(62), tight)),
                new NightEvent.SightingTaken(new LevelledScale(EVENING, Angle.ofDegrees(62), tight)),
                new NightEvent.SightingTaken(frames(EVENING, false, 0, 30, 60)),
                new NightEvent.SightingTaken(new BodyBearing(
                        EVENING,
                        new FixedStar("a star", CatalogueStar.fixed(Angle.ofDegrees(37.95), Angle.ofDegrees(89.26))),
                        BodyBearing.Line.TOWARD_BODY,
                        Angle.ofDegrees(8),
                        tight)));
        List<LoggedEvent> night = new ArrayList<>();
        events.forEach(event -> night.add(new LoggedEvent(night.size() + 1L, EVENING, event)));
        assertThat(FixWords.contradictions(NightState.of(night)))
                .singleElement()
                .asString()
                .startsWith("CONTRADICTS #6 (camera frames): a ")
                .endsWith("-sigma outlier; not used. Check the clock, and that nothing but right ascension"
                        + " was turned between the frames; take them again.");
    }

    @Test
    void driveState_isDescribedWithItsSource() {
        assertThat(FrameWords.of(new InferredDrive(Drive.TRACKING, true)))
                .isEqualTo("The drive was tracking, from the frames; the axis does not depend on it.");
        assertThat(FrameWords.of(new InferredDrive(Drive.STANDING, false)))
                .isEqualTo("The drive was off, as given; the axis does not depend on it.");
        assertThat(FrameWords.of(new InferredDrive(Drive.NOT_TOLD, false)))
                .isEqualTo("The frames do not show whether the drive was on; the axis does not depend on it.");
    }

    @Test
    void driftAndPeriodicError_areSeparated() {
        TrackedSequence.Drift north = new TrackedSequence.Drift(Angle.ofArcseconds(-1.234), Angle.ofArcseconds(0.04));
        TrackedSequence.Drift east = new TrackedSequence.Drift(Angle.ofArcseconds(0.51), Angle.ofArcseconds(0.2));
        PeriodicError worm = new PeriodicError(
                Angle.ofArcseconds(12.4),
                Angle.ofArcseconds(4),
                Angle.ofDegrees(60),
                Optional.of(new PeriodicError.Wave(
                        Duration.ofSeconds(479), Angle.ofArcseconds(5.5), Angle.ofArcseconds(0.1))));
        assertThat(FrameWords.of(new TrackedSequence(
                        EVENING,
                        Duration.ofMinutes(10),
                        Angle.ofDegrees(83.8),
                        Angle.ofDegrees(60),
                        north,
                        east,
                        worm)))
                .containsExactly(
                        "Declination drifts 1.23″ ± 0.04″ per minute south: this measures the axis.",
                        "Right ascension drifts 0.51″ ± 0.20″ per minute east: this includes the drive rate.",
                        "Periodic error in right ascension, scaled to the equator: 25″ peak to peak, main period 479"
                                + " s, 11″ amplitude.");
    }
}
