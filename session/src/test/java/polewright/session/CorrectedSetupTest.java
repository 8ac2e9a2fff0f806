package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.camera.Drive;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.RigCorrection;
import polewright.mount.rig.ScrewCorrection;
import polewright.mount.rig.ScrewSense;
import polewright.mount.rig.View;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.JsonLines;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.body.FixedStar;
import polewright.sky.fields.BodyNames;
import polewright.sky.magnetic.MagneticModel;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** A night whose rig or site was corrected partway equals a night that began with the right ones. */
class CorrectedSetupTest {
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:00Z");
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Rig RIG = Rig.typicalForkOnWedge();
    private static final FixedStar CAPELLA =
            new FixedStar("Capella", CatalogueStar.fixed(Angle.ofDegrees(79.172), Angle.ofDegrees(45.998)));
    private static final FixedStar POLARIS =
            new FixedStar("Polaris", CatalogueStar.fixed(Angle.ofDegrees(37.954), Angle.ofDegrees(89.264)));

    private static Rig withExperience() {
        return RIG.withExperience(Optional.of(new Experience(
                3,
                0.9,
                0.03,
                1.1,
                0.04,
                5,
                new AxisOffset(Angle.ofArcminutes(0.5), Angle.ofArcminutes(-1)),
                Angle.ofArcminutes(0.6))));
    }

    private static NightEvent.Begun begun(Site site, Rig rig) {
        return new NightEvent.Begun(
                "Larkfell", site, Weather.standardAt(site.heightMetres()), rig, DiscAllowance.VISUAL);
    }

    private static NightEvent compass(Site site) {
        return new NightEvent.SightingTaken(new CompassBearing(
                EVENING,
                Angle.ofDegrees(2),
                MagneticModel.wmm2025().field(site, EVENING).declination(),
                CompassBearing.USUAL_SIGMA));
    }

    private static Sighting stillThrough(Optic finder) {
        return new StillPoint(
                EVENING.plusSeconds(600),
                POLARIS,
                ReadLength.ofField(0.2, finder.field()),
                new ClockDirection(4.5),
                finder.view(),
                finder.field().times(StillPoint.USUAL_SIGMA_OF_FIELD));
    }

    private static StarDrift drift(boolean north) {
        return new StarDrift(
                EVENING.plusSeconds(1200),
                Duration.ofMinutes(8),
                CAPELLA,
                ReadLength.ofArcseconds(25),
                new DriftDirection.OnSky(north),
                Angle.ofArcseconds(4));
    }

    private static List<LoggedEvent> night(NightEvent... events) {
        List<LoggedEvent> night = new ArrayList<>();
        for (NightEvent event : events) {
            night.add(new LoggedEvent(night.size() + 1L, EVENING.plusSeconds(600L * night.size()), event));
        }
        return night;
    }

    /** A night with everything that depends on a rig or a site. */
    private static List<LoggedEvent> night(NightEvent.Begun begun, Optic finder) {
        return night(
                begun,
                compass(begun.site()),
                new NightEvent.SightingTaken(new LevelledScale(EVENING, Angle.ofDegrees(54), Angle.ofDegrees(1))),
                new NightEvent.SightingTaken(stillThrough(finder)),
                new NightEvent.ScrewsTurned(1.5, -1),
                new NightEvent.SightingTaken(drift(true)),
                new NightEvent.Clamped());
    }

    private static List<LoggedEvent> and(List<LoggedEvent> night, NightEvent... more) {
        List<LoggedEvent> all = new ArrayList<>(night);
        for (NightEvent event : more) {
            all.add(new LoggedEvent(all.size() + 1L, EVENING.plusSeconds(5000), event));
        }
        return all;
    }

    private static NightState stateOf(List<LoggedEvent> events) {
        return NightState.of(events, EVENING.plusSeconds(6000), new NightState.ModelCache());
    }

    private static void assertSame(NightState corrected, NightState rightFromTheBeginning) {
        assertThat(corrected.standing()).isEqualTo(rightFromTheBeginning.standing());
        assertThat(corrected.begun()).isEqualTo(rightFromTheBeginning.begun());
        assertThat(corrected.fix().state().axis())
                .isEqualTo(rightFromTheBeginning.fix().state().axis());
        assertThat(corrected.fix().state().offsetCovariance())
                .isEqualTo(rightFromTheBeginning.fix().state().offsetCovariance());
        assertThat(corrected.fix().rig()).isEqualTo(rightFromTheBeginning.fix().rig());
        assertThat(corrected.advice()).isEqualTo(rightFromTheBeginning.advice());
        assertThat(corrected.allowance()).isEqualTo(rightFromTheBeginning.allowance());
    }

    static List<RigCorrection> corrections() {
        ScrewCorrection left = ScrewCorrection.clockwise(ScrewSense.LEFT);
        ScrewCorrection longer = new ScrewCorrection(
                Optional.of(RIG.altitudeScrew().geometry().scaled(1.25)),
                Optional.empty(),
                Optional.of(0.05),
                Optional.of(0.02),
                Optional.of(0.4),
                Optional.empty());
        return List.of(
                RigCorrection.Figures.ofScrews(left, ScrewCorrection.NONE),
                RigCorrection.Figures.ofScrews(left, ScrewCorrection.clockwise(ScrewSense.LOWERS)),
                RigCorrection.Figures.ofScrews(ScrewCorrection.NONE, longer),
                new RigCorrection.AnotherRig(withExperience()));
    }

    @ParameterizedTest
    @MethodSource("corrections")
    void correctedRig_equalsANightBegunWithIt_andWithdrawn_oneBegunWithout(RigCorrection correction) {
        Optic finder = RIG.widestOptic().orElseThrow();
        List<LoggedEvent> wrong = night(begun(LARKFELL, RIG), finder);
        List<LoggedEvent> right = night(begun(LARKFELL, correction.appliedTo(RIG)), finder);
        List<LoggedEvent> corrected = and(wrong, new Correction.RigCorrected(correction));

        assertSame(stateOf(corrected), stateOf(right));
        assertThat(stateOf(corrected).begun()).isNotEqualTo(stateOf(wrong).begun());
        assertThat(stateOf(corrected).lastUndoable()).contains(corrected.get(7));
        assertSame(stateOf(and(corrected, new NightEvent.Withdrawn(8))), stateOf(wrong));
    }

    @Test
    void correctionInAGrowingNight_equalsComputingFromTheBeginning() {
        List<LoggedEvent> corrected = and(
                night(begun(LARKFELL, RIG), RIG.widestOptic().orElseThrow()),
                new Correction.RigCorrected(corrections().get(1)),
                new NightEvent.ScrewsTurned(-0.5, 0.25),
                new Correction.SiteCorrected(Site.ofDegrees(50, 3, 20)),
                new NightEvent.SightingTaken(drift(false)));
        NightState.ModelCache models = new NightState.ModelCache();
        NightState grown = stateOf(corrected);
        for (int n = 1; n <= corrected.size(); n++) {
            grown = NightState.of(corrected.subList(0, n), EVENING.plusSeconds(6000), models);
        }
        assertSame(grown, stateOf(corrected));
    }

    @Test
    void severalCorrections_addUp() {
        List<LoggedEvent> night = night(begun(LARKFELL, RIG), RIG.widestOptic().orElseThrow());
        NightState both = stateOf(and(
                night,
                new Correction.RigCorrected(corrections().get(0)),
                new Correction.RigCorrected(corrections().get(2))));
        assertThat(both.begun().rig().azimuthScrew().clockwise()).isEqualTo(ScrewSense.LEFT);
        assertThat(both.begun().rig().altitudeScrew().backlashTurns()).isEqualTo(0.4);
        assertThat(both.begun().rig().altitudeScrew().clockwise()).isEqualTo(ScrewSense.RAISES);
    }

    @Test
    void experience_isLostOnlyForTheCorrectedValue() {
        Experience learned = withExperience().experience().orElseThrow();
        Experience left =
                corrections().get(0).appliedTo(withExperience()).experience().orElseThrow();

        assertThat(left.azimuthFactor()).isEqualTo(1);
        assertThat(left.azimuthSigma()).isEqualTo(RIG.azimuthScrew().relativeGainSigma());
        assertThat(left.altitudeFactor()).isEqualTo(learned.altitudeFactor());
        assertThat(left.clampShift()).isEqualTo(learned.clampShift());

        // Confirming the current value loses nothing.
        RigCorrection same =
                RigCorrection.Figures.ofScrews(ScrewCorrection.clockwise(ScrewSense.RIGHT), ScrewCorrection.NONE);
        Rig confirmed = same.appliedTo(withExperience());
        assertThat(confirmed.experience()).contains(learned);
        assertThat(same.appliedTo(confirmed)).isEqualTo(confirmed);
    }

    @Test
    void correctedOrConfirmedDirection_isKnown_theOtherScrewsStaysAssumed() {
        for (ScrewSense sense : List.of(ScrewSense.RIGHT, ScrewSense.LEFT)) {
            Rig corrected = RigCorrection.Figures.ofScrews(ScrewCorrection.clockwise(sense), ScrewCorrection.NONE)
                    .appliedTo(RIG);
            assertThat(corrected.azimuthScrew().isSenseAssumed()).isFalse();
            assertThat(corrected.altitudeScrew()).isEqualTo(RIG.altitudeScrew());
            assertThat(corrected.altitudeScrew().isSenseAssumed()).isTrue();
        }
    }

    @Test
    void correctedSite_equalsANightBegunThere_includingTheCompass() {
        // The sign of the longitude: the compass was given the declination of the wrong place.
        Site wrong = Site.ofDegrees(54.60, 2.90, 0);
        Optic finder = RIG.widestOptic().orElseThrow();
        List<LoggedEvent> corrected = and(night(begun(wrong, RIG), finder), new Correction.SiteCorrected(LARKFELL));

        assertSame(stateOf(corrected), stateOf(night(begun(LARKFELL, RIG), finder)));
        assertThat(stateOf(corrected).begun().weather()).isEqualTo(Weather.standardAt(240));
    }

    @Test
    void correctedView_isAppliedToSightingsThroughIt() {
        Optic finder = RIG.widestOptic().orElseThrow();
        Optic erect = new Optic(finder.name(), Angle.ofDegrees(5), View.of(Orientation.ERECT), Optional.empty());
        List<Optic> optics = new ArrayList<>(RIG.optics());
        optics.set(optics.indexOf(finder), erect);
        RigCorrection correction = new RigCorrection.Figures(
                ScrewCorrection.NONE,
                ScrewCorrection.NONE,
                Optional.empty(),
                Optional.empty(),
                Optional.of(optics),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        NightState corrected =
                stateOf(and(night(begun(LARKFELL, RIG), finder), new Correction.RigCorrected(correction)));
        NightState right = stateOf(night(begun(LARKFELL, correction.appliedTo(RIG)), erect));

        assertThat(corrected
                        .fix()
                        .state()
                        .axis()
                        .separation(right.fix().state().axis())
                        .arcseconds())
                .isEqualTo(0, within(1e-3));
    }

    /**
     * Without refraction, a frame placed for a wrong site is that of the right one rotated by the angle between the two
     * horizons: about the pole by the difference in longitude, about east by the difference in latitude.
     */
    @ParameterizedTest
    @CsvSource({"54.60, 2.90", "54.60, -3.40", "-54.60, -2.90", "50, 20", "-2.90, 54.60"})
    void framesPlacedForAWrongSite_giveTheAxisAtTheRightOne(double latitudeDeg, double longitudeDeg) {
        Weather vacuum = new Weather(0, 0, 0);
        Site wrong = Site.ofDegrees(latitudeDeg, longitudeDeg, 240);
        Rotation toWrong = horizontal(wrong)
                .applyInverseTo(new Rotation(
                                Vector3D.PLUS_K,
                                Math.toRadians(wrong.longitude().degrees() + 2.90),
                                RotationConvention.FRAME_TRANSFORM)
                        .applyTo(horizontal(LARKFELL)));
        AxisPointing axis = AxisPointing.of(LARKFELL, AxisOffset.ofArcminutes(25, -12));
        List<CameraAttitude> right = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            // A camera pointing 30° from the axis, rotated about it.
            Rotation swing =
                    new Rotation(axis.elevatedEnd(), Math.toRadians(30 * i - 20), RotationConvention.VECTOR_OPERATOR);
            Vector3D aside = axis.elevatedEnd().orthogonal();
            Rotation camera = new Rotation(aside, Math.toRadians(30), RotationConvention.VECTOR_OPERATOR)
                    .applyTo(new Rotation(Vector3D.PLUS_K, axis.elevatedEnd()));
            right.add(CameraAttitude.of(
                    EVENING.plusSeconds(60L * i),
                    swing.applyTo(camera),
                    RotationCovariance.ofSigmas(Angle.ofArcseconds(2), Angle.ofArcseconds(40))));
        }
        List<CameraAttitude> logged =
                right.stream().map(frame -> frame.turnedBy(toWrong)).toList();
        NightEvent.Begun there = new NightEvent.Begun("Larkfell", wrong, vacuum, RIG, DiscAllowance.VISUAL);

        NightState corrected = stateOf(and(
                night(there, new NightEvent.SightingTaken(TurnedFrames.of(logged, Drive.STANDING))),
                new Correction.SiteCorrected(LARKFELL)));

        List<CameraAttitude> read = ((TurnedFrames)
                        ((NightEvent.SightingTaken) corrected.standing().get(1).event()).sighting())
                .frames();
        for (int i = 0; i < 3; i++) {
            // Diurnal aberration differs by up to 0.3″.
            assertThat(Vector3D.angle(read.get(i).boresight(), right.get(i).boresight()))
                    .isCloseTo(0, within(Math.toRadians(0.5 / 3600)));
        }
        assertThat(corrected.fix().state().axis().separation(axis).arcseconds()).isLessThan(10);
    }

    /** From local directions (east, north, up) to hour angle and declination (south on the equator, east, pole). */
    private static Rotation horizontal(Site site) {
        double latitude = site.latitude().radians();
        Vector3D equator = new Vector3D(0, -Math.sin(latitude), Math.cos(latitude));
        Vector3D pole = new Vector3D(0, Math.cos(latitude), Math.sin(latitude));
        return new Rotation(equator, pole, Vector3D.PLUS_I, Vector3D.PLUS_K);
    }

    @Test
    void replacedSighting_takesThePlaceOfTheWrongOne() {
        Optic finder = RIG.widestOptic().orElseThrow();
        List<LoggedEvent> wrong = night(begun(LARKFELL, RIG), finder);
        List<LoggedEvent> right = new ArrayList<>(wrong);
        right.set(5, new LoggedEvent(6, wrong.get(5).at(), new NightEvent.SightingTaken(drift(false))));
        List<LoggedEvent> replaced = and(
                wrong,
                new NightEvent.ScrewsTurned(0.5, 0.5),
                new Correction.MeasurementCorrected(6, new NightEvent.SightingTaken(drift(false))));

        assertSame(stateOf(replaced), stateOf(and(right, new NightEvent.ScrewsTurned(0.5, 0.5))));
        assertSame(
                stateOf(and(replaced, new NightEvent.Withdrawn(9))),
                stateOf(and(wrong, new NightEvent.ScrewsTurned(0.5, 0.5))));
    }

    @Test
    void measurement_replacesOnlyAMeasurement() {
        List<LoggedEvent> night = and(
                night(begun(LARKFELL, RIG), RIG.widestOptic().orElseThrow()),
                new Correction.MeasurementCorrected(5, new NightEvent.SightingTaken(drift(false))));
        assertThatThrownBy(() -> stateOf(night))
                .isInstanceOf(InputRefused.class)
                .hasMessage("event 5 is neither a sighting nor a centring, so nothing can replace it. Give the"
                        + " number of a"
                        + " sighting, as the log shows it.");
    }

    @Test
    void replacementWithoutItsTime_isRefused() {
        assertThatThrownBy(() -> JsonLines.readLine(
                        "{\"seq\":4,\"at\":\"2026-01-15T19:20:00Z\",\"event\":\"scale\",\"instead_of\":2,"
                                + "\"altitude_deg\":54}",
                        0,
                        BodyNames.NONE))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("instead_of 2 has no seen_at with it");
    }
}
