package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.alignment.sighting.Sighting;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Noise-free sightings recover the axis, up to 15° from the pole, at latitudes 5° to 75° in both hemispheres. */
class ExactSightingsTest {
    private static final Rig RIG = Rig.typicalForkOnWedge();
    // So small that the 8° prior biases the fix of an axis 15° off by less than 0.02″.
    private static final Angle SIGMA = Angle.ofArcminutes(0.05);
    private static final Angle DRIFT_SIGMA = Angle.ofArcseconds(0.1);
    private static final Angle FINDER_FIELD = Angle.ofDegrees(40);

    static Stream<KnownAxis> axes() {
        return LongStream.range(300, 340).mapToObj(ExactSightingsTest::axis);
    }

    private static KnownAxis axis(long seed) {
        Random random = new Random(seed);
        double latitudeDeg = (seed % 2 == 0 ? 1 : -1) * (5 + 70 * random.nextDouble());
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        Angle distance = Angle.ofDegrees(15 * random.nextDouble());
        double way = 2 * Math.PI * random.nextDouble();
        AxisPointing pole = AxisPointing.atPole(site);
        // At exactly that angular distance from the pole.
        var east = org.hipparchus.geometry.euclidean.threed.Vector3D.PLUS_I.scalarMultiply(Math.sin(way));
        var up = AxisPointing.upDirection(site).scalarMultiply(Math.cos(way));
        var aside = east.add(up).scalarMultiply(distance.sin());
        return KnownAxis.exactly(
                site,
                new AxisPointing(
                        pole.elevatedEnd().scalarMultiply(distance.cos()).add(aside)));
    }

    private static Fix fix(KnownAxis known, List<Sighting> sightings) {
        List<Step> steps = new ArrayList<>();
        for (Sighting sighting : sightings) {
            steps.add(known.step(steps.size() + 2L, sighting));
        }
        return FixSolver.solve(known.site(), RIG, KnownAxis.AIR, steps);
    }

    @ParameterizedTest
    @MethodSource("axes")
    void compassAndScale(KnownAxis known) {
        assertAxis(known, known.compass(SIGMA), known.scale(SIGMA));
    }

    @ParameterizedTest
    @MethodSource("axes")
    void shadowAndAltitudeAgainstAStar(KnownAxis known) {
        assertAxis(known, known.shadow(SIGMA), known.altitude(SIGMA));
    }

    @ParameterizedTest
    @MethodSource("axes")
    void bearingOfAStarAndScale(KnownAxis known) {
        assertAxis(known, known.bearing(SIGMA), known.scale(SIGMA));
    }

    @ParameterizedTest
    @MethodSource("axes")
    void stillPointAlone_inEveryView(KnownAxis known) {
        for (Orientation orientation : Orientation.values()) {
            View turned = new View(orientation, Angle.ofDegrees(35));
            assertAxis(known, known.stillPoint(turned, FINDER_FIELD, SIGMA));
        }
    }

    @ParameterizedTest
    @MethodSource("axes")
    void driftsOnTheMeridianAndInTheEast(KnownAxis known) {
        assertAxis(known, known.driftOnMeridian(15, DRIFT_SIGMA), known.driftInEast(15, DRIFT_SIGMA));
    }

    @ParameterizedTest
    @MethodSource("axes")
    void driftsOnTheMeridianAndInTheWest_afterCompassAndScale(KnownAxis known) {
        assertAxis(
                known,
                known.compass(Angle.ofDegrees(3)),
                known.scale(Angle.ofDegrees(1)),
                known.driftInWest(10, DRIFT_SIGMA),
                known.driftOnMeridian(10, DRIFT_SIGMA));
    }

    @ParameterizedTest
    @MethodSource("axes")
    void allKindsTogether(KnownAxis known) {
        assertAxis(
                known,
                known.compass(SIGMA),
                known.scale(SIGMA),
                known.shadow(SIGMA),
                known.bearing(SIGMA),
                known.altitude(SIGMA),
                known.stillPoint(View.of(Orientation.MIRRORED), FINDER_FIELD, SIGMA),
                known.driftOnMeridian(15, DRIFT_SIGMA),
                known.driftInWest(15, DRIFT_SIGMA));
    }

    private static void assertAxis(KnownAxis known, Sighting... sightings) {
        Fix fix = fix(known, List.of(sightings));
        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.agreements()).noneMatch(Agreement::contradictory);
        assertThat(fix.state().axis().separation(known.axis()).arcseconds()).isLessThan(0.3);
    }

    @ParameterizedTest
    @MethodSource("axes")
    void oneDirectionAlone_isRecovered_andTheOtherKeepsItsPrior(KnownAxis known) {
        for (Function<KnownAxis, Sighting> azimuth : List.<Function<KnownAxis, Sighting>>of(
                a -> a.compass(SIGMA), a -> a.shadow(SIGMA), a -> a.bearing(SIGMA))) {
            AxisState state = fix(known, List.of(azimuth.apply(known))).state();
            assertThat(state.axis()
                            .azimuth()
                            .minus(known.axis().azimuth())
                            .wrappedSigned()
                            .arcseconds())
                    .isCloseTo(0, within(0.3));
            assertThat(state.axis().altitude().degrees())
                    .isCloseTo(known.site().poleAltitude().degrees(), within(1e-6));
        }
        for (Function<KnownAxis, Sighting> altitude :
                List.<Function<KnownAxis, Sighting>>of(a -> a.scale(SIGMA), a -> a.altitude(SIGMA))) {
            AxisState state = fix(known, List.of(altitude.apply(known))).state();
            assertThat(state.axis().altitude().minus(known.axis().altitude()).arcseconds())
                    .isCloseTo(0, within(0.3));
            assertThat(state.axis().azimuthError(known.site()).degrees()).isCloseTo(0, within(1e-6));
        }
    }

    /** One drift constrains the axis to a line in azimuth and altitude; the fix lies on it. */
    @ParameterizedTest
    @MethodSource("axes")
    void oneDriftAlone_isFitted(KnownAxis known) {
        for (Sighting drift : List.of(
                known.driftOnMeridian(15, DRIFT_SIGMA),
                known.driftInEast(15, DRIFT_SIGMA),
                known.driftInWest(15, DRIFT_SIGMA))) {
            AxisState state = fix(known, List.of(drift)).state();
            double residual = drift.model(known.site(), KnownAxis.AIR)
                    .residual(state.axis().elevatedEnd())[0];
            assertThat(residual).isCloseTo(0, within(0.01));
        }
    }
}
