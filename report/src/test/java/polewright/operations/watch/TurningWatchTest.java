package polewright.operations.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.camera.Drive;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Rig;
import polewright.report.text.WatchWords;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.Site;

/** Error-free frames of a mount that moves only as stated, and what each lets the watch report. */
class TurningWatchTest {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    private static final Vector3D AXIS =
            AxisPointing.of(LARKFELL, AxisOffset.ofArcminutes(42, -17)).elevatedEnd();
    private static final RotationCovariance GOOD =
            RotationCovariance.ofSigmas(Angle.ofArcseconds(1), Angle.ofArcseconds(20));

    private final TurningWatch watch = newWatch();

    private static TurningWatch newWatch() {
        return watchOf(Rig.typicalForkOnWedge());
    }

    private static TurningWatch watchOf(Rig rig) {
        return new TurningWatch(
                LARKFELL, FollowedScrews.Known.byTheRig(rig), new DiscAllowance(Angle.ofArcminutes(5)), Drive.NOT_TOLD);
    }

    /**
     * A frame after turning right ascension west by {@code westDeg} and swinging the wedge to the right by {@code
     * swungDeg}.
     */
    private static CameraAttitude frame(double minutes, double westDeg, double swungDeg) {
        Vector3D square = AXIS.orthogonal();
        Vector3D boresight = new Vector3D(Math.cos(0.3), AXIS, Math.sin(0.3), square);
        Rotation start = new Rotation(Vector3D.PLUS_K, Vector3D.PLUS_I, boresight, AXIS.crossProduct(square));
        Rotation turned = new Rotation(AXIS, -Math.toRadians(westDeg), RotationConvention.VECTOR_OPERATOR);
        Rotation swung = new Rotation(Vector3D.PLUS_K, -Math.toRadians(swungDeg), RotationConvention.VECTOR_OPERATOR);
        Instant at = EVENING.plus(Duration.ofSeconds(Math.round(60 * minutes)));
        return CameraAttitude.of(at, swung.applyTo(turned).applyTo(start), GOOD);
    }

    private void findTheAxis() {
        watch.add(frame(0, 0, 0));
        assertThat(watch.add(frame(1, 40, 0))).isInstanceOf(WatchStep.AxisFound.class);
    }

    @Test
    void frameOfTheNextNight_startsAfresh_andTheAxisIsFoundFromThere() {
        watch.add(frame(0, 0, 0));
        assertThat(watch.add(frame(9 * 60, 40, 0)))
                .isEqualTo(new WatchStep.StartedAfresh(Optional.empty(), Optional.empty()));
        assertThat(watch.add(frame(9 * 60 + 1, 0, 0))).isInstanceOf(WatchStep.AxisFound.class);
        assertThat(watch.sighting().orElseThrow().frames()).hasSize(2);
    }

    @Test
    void frameOfTheNightBefore_isRefused_andTheOthersAreKept() {
        watch.add(frame(9 * 60, 0, 0));
        assertThatThrownBy(() -> watch.add(frame(0, 40, 0)))
                .isInstanceOf(InputRefused.class)
                .hasMessageStartingWith("the frame was taken more than 8 hours before the others. ");
        assertThat(watch.add(frame(9 * 60 + 1, 40, 0))).isInstanceOf(WatchStep.AxisFound.class);
    }

    @Test
    void afterHours_screwsAreNoLongerFollowed_andTheAxisIsFoundAfresh() {
        findTheAxis();
        watch.add(frame(2, 40, 1));
        assertThat(watch.screwsMoved()).isTrue();
        WatchStep.LeftOff leftOff = watch.leftOff().orElseThrow();
        assertThat(leftOff.sighting()).isEqualTo(watch.sighting().orElseThrow());
        assertThat(watch.add(frame(130, 40, 1)))
                .isEqualTo(new WatchStep.StartedAfresh(Optional.empty(), Optional.of(leftOff)));
        assertThat(watch.screwsMoved()).isFalse();
        assertThat(watch.sighting()).isEmpty();
        assertThat(watch.add(frame(131, 0, 1))).isInstanceOf(WatchStep.AxisFound.class);
    }

    /** At the same right ascension position, so that the time is the only difference. */
    @Test
    void frameOfTheNextNightInTheSamePlace_startsAfresh() {
        watch.add(frame(0, 0, 0));
        assertThat(watch.add(frame(9 * 60, 0, 0)))
                .isEqualTo(new WatchStep.StartedAfresh(Optional.empty(), Optional.empty()));
    }

    @Test
    void frameOfTheNightBeforeInTheSamePlace_isRefused() {
        watch.add(frame(9 * 60, 0, 0));
        assertThatThrownBy(() -> watch.add(frame(0, 0, 0)))
                .hasMessageStartingWith("the frame was taken more than 8 hours before the others. ");
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void slewInDeclination_isNotAScrewMove(boolean afterScrews) {
        findTheAxis();
        if (afterScrews) {
            watch.add(frame(2, 40, 1));
        }
        Optional<WatchStep.LeftOff> leftOff = watch.leftOff();
        assertThat(leftOff.isPresent()).isEqualTo(afterScrews);
        WatchStep.StartedAfresh afresh = (WatchStep.StartedAfresh) watch.add(slewed(frame(3, 40, 0), 60));
        assertThat(afresh.slew().orElseThrow().degrees()).isCloseTo(60, within(1.0));
        assertThat(afresh.leftOff()).isEqualTo(leftOff);
        assertThat(WatchWords.startedAfresh(afresh))
                .startsWith("The camera points somewhere else, as after a slew: to explain it, the screws would have to"
                        + " have moved the axis ");
        assertThat(watch.add(slewed(frame(4, 0, 0), 60))).isInstanceOf(WatchStep.AxisFound.class);
    }

    /** A mount set down 14 degrees off: beyond the travel of the screws, but the screws lead to the pole. */
    @Test
    void longMoveToThePole_isAScrewMove() {
        watch.add(frame(0, 0, 25));
        watch.add(frame(1, 40, 25));
        assertThat(watch.add(frame(2, 40, 0))).isInstanceOf(WatchStep.ScrewsFollowed.class);
    }

    private static CameraAttitude slewed(CameraAttitude frame, double declinationDeg) {
        Vector3D declinationAxis = frame.boresight().crossProduct(AXIS).normalize();
        return frame.turnedBy(
                new Rotation(declinationAxis, Math.toRadians(declinationDeg), RotationConvention.VECTOR_OPERATOR));
    }

    @Test
    void lateArrival_doesNotReplaceANewerFrame() {
        findTheAxis();
        CameraAttitude last = frame(4, 40, 1.5);
        watch.add(last);
        assertThat(watch.add(frame(3, 40, 1))).isInstanceOf(WatchStep.ScrewsFollowed.class);
        assertThat(watch.sighting().orElseThrow().afterScrews()).contains(last);
    }

    /**
     * On earlier nights clamping raised the axis by 6′: the remaining turns end 6′ lower, and so does the good-enough
     * test.
     */
    @Test
    void remainingTurnsAndGoodEnough_allowForClamping() {
        Rig plain = Rig.typicalForkOnWedge();
        Rig pushed = plain.withExperience(Optional.of(
                new Experience(4, 1, 0.05, 1, 0.05, 4, AxisOffset.ofArcminutes(0, 6), Angle.ofArcminutes(1))));
        CameraAttitude atThePole = broughtTo(AxisOffset.NONE);
        CameraAttitude short6Arcmin = broughtTo(AxisOffset.ofArcminutes(0, -6));

        assertThat(followed(watchOf(plain), atThePole).goodEnough()).isTrue();
        assertThat(followed(watchOf(plain), short6Arcmin).goodEnough()).isFalse();
        assertThat(followed(watchOf(pushed), atThePole).goodEnough()).isFalse();
        WatchStep.ScrewsFollowed there = followed(watchOf(pushed), short6Arcmin);
        assertThat(there.goodEnough()).isTrue();
        assertThat(there.remaining().altitude()).isCloseTo(0, within(0.05));
        double sixMinutes = plain.altitudeScrew().turnsFor(Angle.ofArcminutes(-6), LARKFELL.poleAltitude());
        assertThat(followed(watchOf(pushed), atThePole).remaining().altitude()).isCloseTo(sixMinutes, within(0.05));
    }

    private static WatchStep.ScrewsFollowed followed(TurningWatch watch, CameraAttitude frame) {
        watch.add(frame(0, 0, 0));
        watch.add(frame(1, 40, 0));
        return (WatchStep.ScrewsFollowed) watch.add(frame);
    }

    /**
     * A frame after the wedge has moved the axis to the offset: swung about the vertical and raised about its hinge.
     */
    private static CameraAttitude broughtTo(AxisOffset offset) {
        AxisPointing from = AxisPointing.of(LARKFELL, AxisOffset.ofArcminutes(42, -17));
        AxisPointing to = AxisPointing.of(LARKFELL, offset);
        Vector3D hinge = new Vector3D(from.azimuth().cos(), -from.azimuth().sin(), 0);
        Rotation raised =
                new Rotation(hinge, to.altitude().minus(from.altitude()).radians(), RotationConvention.VECTOR_OPERATOR);
        double swungRad = to.azimuth().minus(from.azimuth()).wrappedSigned().radians();
        Rotation swung = new Rotation(Vector3D.PLUS_K, -swungRad, RotationConvention.VECTOR_OPERATOR);
        return frame(2, 40, 0).turnedBy(swung.applyTo(raised));
    }

    @Test
    void resuming_keepsTheAxisReachedByTheScrews() {
        TurnedFrames logged = new TurnedFrames(
                List.of(frame(0, 0, 0), frame(1, 40, 0)), Optional.of(frame(2, 40, 1)), Drive.NOT_TOLD);
        watch.continueFrom(logged);
        assertThat(watch.screwsMoved()).isFalse();
        assertThat(watch.sighting()).contains(logged);
        watch.add(frame(3, 40, 1.2));
        assertThat(watch.screwsMoved()).isTrue();
    }
}
