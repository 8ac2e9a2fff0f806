package polewright.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

class HiddenWedgeTest {
    /** Half a degree a turn for each screw, with a practically exact hand. */
    private static Rig rig(double backlashTurns) {
        ScrewGeometry geometry = new ScrewGeometry.DegreesPerTurn(Angle.ofDegrees(0.5));
        return new Rig(
                "exact",
                MountKind.FORK_ON_WEDGE,
                new Screw(geometry, ScrewSense.RIGHT, 0.1, 0.001, backlashTurns),
                new Screw(geometry, ScrewSense.RAISES, 0.1, 0.001, backlashTurns),
                Angle.ofDegrees(1.5),
                Angle.ofArcminutes(2),
                List.of());
    }

    private static HiddenWedge level(double latitudeDeg, AxisOffset offset) {
        return leaning(latitudeDeg, offset, Vector3D.PLUS_K);
    }

    private static HiddenWedge leaning(double latitudeDeg, AxisOffset offset, Vector3D azimuthAxis) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        Vector3D axis = AxisPointing.of(site, offset).elevatedEnd();
        return new HiddenWedge(
                site, rig(0), axis, azimuthAxis.normalize(), 1, 1, DeadZone.untouched(0), DeadZone.untouched(0));
    }

    // Hand errors of a thousandth of a turn: 0.03′. Five sigmas of that.
    private static final double HAND_ARCMIN = 0.15;

    @ParameterizedTest
    @ValueSource(doubles = {70, 54.6, 10, -10, -43.95, -70})
    void azimuthTurnOnALevelBase_addsAzimuth_toTheRightInBothHemispheres_andLeavesAltitude(double latitudeDeg) {
        HiddenWedge before = level(latitudeDeg, AxisOffset.ofArcminutes(200, -100));

        HiddenWedge after = before.turned(4, 0, new Random(1));

        assertThat(after.pointing()
                        .azimuth()
                        .minus(before.pointing().azimuth())
                        .wrappedSigned()
                        .arcminutes())
                .isCloseTo(120, within(HAND_ARCMIN));
        assertThat(after.pointing()
                        .altitude()
                        .minus(before.pointing().altitude())
                        .arcseconds())
                .isCloseTo(0, within(1e-6));
        // Facing north, right is east; facing south it is west.
        double eastward = after.offset().east().minus(before.offset().east()).arcminutes();
        assertThat(Math.signum(eastward)).isEqualTo(latitudeDeg > 0 ? 1 : -1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {70, 54.6, 10, -10, -43.95, -70})
    void altitudeTurnOnALevelBase_raises_andLeavesAzimuth(double latitudeDeg) {
        HiddenWedge before = level(latitudeDeg, AxisOffset.ofArcminutes(200, -100));

        HiddenWedge after = before.turned(0, 4, new Random(2));

        assertThat(after.pointing()
                        .altitude()
                        .minus(before.pointing().altitude())
                        .arcminutes())
                .isCloseTo(120, within(HAND_ARCMIN));
        assertThat(after.pointing()
                        .azimuth()
                        .minus(before.pointing().azimuth())
                        .wrappedSigned()
                        .arcseconds())
                .isCloseTo(0, within(1e-6));
    }

    /** Computed outside this project: turning azimuth by D changes altitude by β sin(A − α) D. */
    @ParameterizedTest
    @CsvSource({"54.6, 90", "54.6, 270", "54.6, 0", "-43.95, 90", "-43.95, 200", "20, 300"})
    void leaningBase_mixesAzimuthIntoAltitude(double latitudeDeg, double leansTowardDeg) {
        double tilt = Math.toRadians(2);
        double toward = Math.toRadians(leansTowardDeg);
        HiddenWedge before = leaning(
                latitudeDeg,
                AxisOffset.NONE,
                new Vector3D(Math.tan(tilt) * Math.sin(toward), Math.tan(tilt) * Math.cos(toward), 1));

        HiddenWedge after = before.turned(2, 0, new Random(3));

        double azimuth = before.pointing().azimuth().radians();
        double raised =
                after.pointing().altitude().minus(before.pointing().altitude()).arcminutes();
        // Second order: D² / 2 · tan: 60′ · 0.0175 / 2, times the lean again; and the lean squared.
        assertThat(raised).isCloseTo(60 * tilt * Math.sin(azimuth - toward), within(0.06));
        double swung = after.pointing()
                .azimuth()
                .minus(before.pointing().azimuth())
                .wrappedSigned()
                .arcminutes();
        double expected = 60 * (1 - tilt * before.pointing().altitude().tan() * Math.cos(azimuth - toward));
        assertThat(swung).isCloseTo(expected, within(HAND_ARCMIN + 0.1));
    }

    @Test
    void screws_followTheirHiddenFactors() {
        HiddenWedge plain = level(54.6, AxisOffset.NONE);
        HiddenWedge strong = new HiddenWedge(
                plain.site(),
                plain.rig(),
                plain.axis(),
                plain.azimuthAxis(),
                1.2,
                0.7,
                plain.azimuthBacklash(),
                plain.altitudeBacklash());

        HiddenWedge after = strong.turned(-3, 2, new Random(4));

        assertThat(after.pointing().azimuthError(plain.site()).arcminutes()).isCloseTo(-108, within(0.3));
        assertThat(after.pointing().altitudeError(plain.site()).arcminutes()).isCloseTo(42, within(0.2));
    }

    @Test
    void reversal_losesHalfTheMaximumBacklashOnAverage() {
        Random random = new Random(5);
        Site site = Site.ofDegrees(30, 0, 0);
        double lost = 0;
        int times = 2000;
        for (int i = 0; i < times; i++) {
            HiddenWedge wedge = withPlay(site, random).turned(1, 0, random).turned(-1, 0, random);
            lost += wedge.pointing().azimuthError(site).arcminutes() / 30 / wedge.azimuthFactor();
        }
        // Uniform from 0 to 0.4 turns; the mean of 2000 is known to 0.4 / √12 / √2000 = 0.0026.
        assertThat(lost / times).isCloseTo(0.2, within(0.012));
    }

    /** Up to 0.4 turns of backlash, drawn for each wedge of this rig. */
    private static HiddenWedge withPlay(Site site, Random random) {
        HiddenWedge drawn = HiddenWedge.of(site, rig(0.4), AxisOffset.NONE, random);
        return new HiddenWedge(
                site,
                drawn.rig(),
                drawn.axis(),
                Vector3D.PLUS_K,
                drawn.azimuthFactor(),
                drawn.altitudeFactor(),
                drawn.azimuthBacklash(),
                drawn.altitudeBacklash());
    }

    /** What one leg loses the other gives back, in either sense and hemisphere. */
    @ParameterizedTest
    @CsvSource({"54.6, 1", "54.6, -1", "-43.95, 1", "-43.95, -1"})
    void turningPastTheTargetAndBack_losesNothing(double latitudeDeg, double sense) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 0);
        Random random = new Random(9);
        for (int i = 0; i < 20; i++) {
            HiddenWedge before = withPlay(site, random).turned(sense, sense, random);
            HandTurns back = new HandTurns(-2 * sense, 0.5 * sense);

            HiddenWedge after = before.turned(back, back, random);

            double swung = after.pointing()
                    .azimuth()
                    .minus(before.pointing().azimuth())
                    .wrappedSigned()
                    .arcminutes();
            double raised = after.pointing()
                    .altitude()
                    .minus(before.pointing().altitude())
                    .arcminutes();
            assertThat(swung).isCloseTo(-60 * sense * before.azimuthFactor(), within(2 * HAND_ARCMIN));
            assertThat(raised).isCloseTo(-60 * sense * before.altitudeFactor(), within(2 * HAND_ARCMIN));
        }
    }

    @Test
    void backlashOfAWedge_isTheSameAtEveryReversal() {
        Site site = Site.ofDegrees(54.6, 0, 0);
        Random random = new Random(10);
        HiddenWedge wedge = withPlay(site, random).turned(0, 1, random);
        double play = wedge.altitudeBacklash().turns();
        for (double turns : new double[] {-1, 1, -2, 2}) {
            HiddenWedge before = wedge;
            wedge = wedge.turned(0, turns, random);
            double effective = wedge.pointing()
                            .altitude()
                            .minus(before.pointing().altitude())
                            .arcminutes()
                    / 30
                    / wedge.altitudeFactor();
            assertThat(Math.abs(effective)).isCloseTo(Math.abs(turns) - play, within(0.006));
        }
    }

    @Test
    void clampShift_hasTheStatedUncertaintyInEachDirection() {
        Random random = new Random(6);
        HiddenWedge wedge = level(-43.95, AxisOffset.ofArcminutes(30, 20));
        double east = 0;
        double up = 0;
        int times = 4000;
        for (int i = 0; i < times; i++) {
            AxisOffset shift = wedge.clamped(random).offset().minus(wedge.offset());
            east += Math.pow(shift.east().arcminutes(), 2);
            up += Math.pow(shift.up().arcminutes(), 2);
        }
        // A standard deviation from 4000 is known to 1.1 %.
        assertThat(Math.sqrt(east / times)).isCloseTo(2, within(0.09));
        assertThat(Math.sqrt(up / times)).isCloseTo(2, within(0.09));
    }

    @Test
    void moveByHand_goesRightAndUpToAboutADegree() {
        HiddenWedge wedge = level(-43.95, AxisOffset.NONE);
        HiddenWedge moved = wedge.moved(Angle.ofDegrees(10), Angle.ofDegrees(-5), new Random(7));
        assertThat(moved.pointing().azimuthError(wedge.site()).degrees()).isCloseTo(10, within(4.0));
        assertThat(moved.pointing().altitudeError(wedge.site()).degrees()).isCloseTo(-5, within(4.0));
    }

    @Test
    void drawnWedges_haveTheStatedUncertainty() {
        Random random = new Random(8);
        Site site = Site.ofDegrees(54.6, 0, 0);
        double factor = 0;
        double tilt = 0;
        int times = 4000;
        for (int i = 0; i < times; i++) {
            HiddenWedge wedge = HiddenWedge.of(site, rig(0), AxisOffset.NONE, random);
            factor += Math.pow(wedge.azimuthFactor() - 1, 2);
            tilt += Math.pow(Math.toDegrees(wedge.azimuthAxis().getX()), 2);
        }
        assertThat(Math.sqrt(factor / times)).isCloseTo(0.1, within(0.005));
        assertThat(Math.sqrt(tilt / times)).isCloseTo(1.5, within(0.07));
    }
}
