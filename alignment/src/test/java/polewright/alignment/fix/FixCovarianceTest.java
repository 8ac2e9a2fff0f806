package polewright.alignment.fix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.sighting.Sighting;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** The covariance of the fix in cases with a closed-form answer. */
class FixCovarianceTest {
    private static final Rig RIG = Rig.typicalForkOnWedge();
    private static final double PRIOR_ARCMIN = AxisState.PRIOR_SIGMA.arcminutes();

    private static KnownAxis atPole(double latitudeDeg) {
        return KnownAxis.exactly(Site.ofDegrees(latitudeDeg, 0, 200), AxisOffset.NONE);
    }

    private static AxisState state(KnownAxis known, List<Sighting> sightings) {
        List<Step> steps = new ArrayList<>();
        sightings.forEach(s -> steps.add(known.step(steps.size() + 2L, s)));
        return FixSolver.solve(known.site(), RIG, KnownAxis.AIR, steps).state();
    }

    /** Variance of one quantity from two independent measurements, given their sigmas. */
    private static double combinedVariance(double sigma, double other) {
        return 1 / (1 / (sigma * sigma) + 1 / (other * other));
    }

    @ParameterizedTest
    @ValueSource(doubles = {75, 54.6, 5, -5, -43.95, -75})
    void compassAndScale_giveEastAsAzimuthTimesCosLatitude_andUpAsAltitude(double latitudeDeg) {
        KnownAxis known = atPole(latitudeDeg);

        OffsetCovariance covariance = state(
                        known, List.of(known.compass(Angle.ofDegrees(3)), known.scale(Angle.ofDegrees(1))))
                .offsetCovariance();

        double compass = 180 * known.site().latitude().cos();
        assertThat(covariance.eastEastArcmin2())
                .isCloseTo(combinedVariance(compass, PRIOR_ARCMIN), Percentage.withPercentage(1e-4));
        assertThat(covariance.upUpArcmin2())
                .isCloseTo(combinedVariance(60, PRIOR_ARCMIN), Percentage.withPercentage(1e-4));
        assertThat(covariance.eastUpArcmin2()).isCloseTo(0, within(1e-3));
    }

    @ParameterizedTest
    @ValueSource(doubles = {75, 54.6, 5, -5, -43.95, -75})
    void covarianceBeforeAnySighting_isThePriorOnTheSky(double latitudeDeg) {
        OffsetCovariance covariance = state(atPole(latitudeDeg), List.of()).offsetCovariance();

        // Below 84° latitude, where the azimuth prior is not yet capped.
        double prior = PRIOR_ARCMIN * PRIOR_ARCMIN;
        assertThat(covariance.eastEastArcmin2()).isCloseTo(prior, Percentage.withPercentage(1e-3));
        assertThat(covariance.upUpArcmin2()).isCloseTo(prior, Percentage.withPercentage(1e-3));
    }

    /**
     * Two drifts: the information is that of the prior plus Σ rᵀr/σ² with r = (−(sin H₂ − sin H₁), cos H₂ − cos H₁) for
     * the northern end. The sign of the hemisphere cancels in the square.
     */
    @ParameterizedTest
    @ValueSource(doubles = {60, 54.6, 20, -20, -43.95, -60})
    void twoDrifts_giveTheCovarianceOfTheirHourAngles(double latitudeDeg) {
        KnownAxis known = atPole(latitudeDeg);
        double sigmaArcsec = 3;
        double prior = 1 / (PRIOR_ARCMIN * PRIOR_ARCMIN);
        double ee = prior;
        double eu = 0;
        double uu = prior;
        double advance = Math.toRadians(10 * 15.041067 / 60);
        for (double start : new double[] {Math.toRadians(-1), Math.toRadians(-70)}) {
            double east = -(Math.sin(start + advance) - Math.sin(start)) * 60 / sigmaArcsec;
            double up = (Math.cos(start + advance) - Math.cos(start)) * 60 / sigmaArcsec;
            ee += east * east;
            eu += east * up;
            uu += up * up;
        }
        double determinant = ee * uu - eu * eu;

        OffsetCovariance covariance = state(
                        known,
                        List.of(
                                known.driftOnMeridian(10, Angle.ofArcseconds(sigmaArcsec)),
                                known.driftInEast(10, Angle.ofArcseconds(sigmaArcsec))))
                .offsetCovariance();

        // Refraction changes the stars' tracks by one part in a thousand.
        assertThat(covariance.eastEastArcmin2()).isCloseTo(uu / determinant, Percentage.withPercentage(2));
        assertThat(covariance.upUpArcmin2()).isCloseTo(ee / determinant, Percentage.withPercentage(2));
        assertThat(covariance.eastUpArcmin2())
                .isCloseTo(-eu / determinant, within(0.02 * Math.sqrt(ee * uu) / determinant));
    }

    @Test
    void stillPoint_measuresBothDirectionsEqually() {
        KnownAxis known = atPole(-43.95);

        OffsetCovariance covariance = state(
                        known,
                        List.of(known.stillPoint(
                                View.of(Orientation.MIRRORED), Angle.ofDegrees(6), Angle.ofArcminutes(18))))
                .offsetCovariance();

        // The vertical in the view tilts as the axis moves sideways: a star 30′ away adds about 1 %.
        assertThat(covariance.sigmaEast().arcminutes()).isCloseTo(18, within(0.3));
        assertThat(covariance.sigmaUp().arcminutes()).isCloseTo(18, within(0.3));
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15})
    void orderOfSightings_betweenTwoMoves_makesNoDifference(long seed) {
        Random random = new Random(seed);
        Site site = Site.ofDegrees(seed % 2 == 0 ? 54.6 : -43.95, 0, 200);
        KnownAxis known = new KnownAxis(
                site,
                KnownAxis.exactly(site, AxisOffset.ofArcminutes(200, -150)).axis(),
                random::nextGaussian);
        List<Step> sightings = new ArrayList<>(List.of(
                known.step(2, known.compass(Angle.ofDegrees(3))),
                known.step(3, known.scale(Angle.ofDegrees(1))),
                known.step(4, known.stillPoint(View.NAKED_EYE, Angle.ofDegrees(12), Angle.ofArcminutes(30))),
                known.step(5, known.driftOnMeridian(5, Angle.ofArcseconds(4))),
                known.step(6, known.driftInWest(5, Angle.ofArcseconds(4)))));
        Fix inOrder = FixSolver.solve(site, RIG, KnownAxis.AIR, sightings);
        for (int i = 0; i < 5; i++) {
            Collections.shuffle(sightings, random);
            Fix shuffled = FixSolver.solve(site, RIG, KnownAxis.AIR, sightings);
            assertThat(shuffled.state()
                            .axis()
                            .separation(inOrder.state().axis())
                            .arcseconds())
                    .isLessThan(1e-3);
            assertThat(shuffled.state().offsetCovariance().eastEastArcmin2())
                    .isCloseTo(inOrder.state().offsetCovariance().eastEastArcmin2(), Percentage.withPercentage(1e-3));
        }
    }
}
