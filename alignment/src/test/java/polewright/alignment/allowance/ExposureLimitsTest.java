package polewright.alignment.allowance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static polewright.alignment.allowance.Items.LARKFELL;
import static polewright.alignment.allowance.Items.MEAN;
import static polewright.alignment.allowance.Items.TINY;
import static polewright.alignment.allowance.Items.TUSSOCK_FLAT;
import static polewright.alignment.allowance.Items.UNGUIDED;
import static polewright.alignment.allowance.Items.along;
import static polewright.alignment.allowance.Items.at;
import static polewright.alignment.allowance.Items.shot;
import static polewright.alignment.allowance.Items.zone;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

class ExposureLimitsTest {
    private static final OffsetCovariance CERTAIN = new OffsetCovariance(0, 0, 0);
    private static final Camera MAIN = new Camera("main", 1000, 3.8, 4656, 3520);

    private static ExposureLimits.Limit longest(
            Site site, Weather weather, ImagingRun shot, AxisOffset offset, OffsetCovariance covariance) {
        return ExposureLimits.longest(site, weather, Rig.typicalForkOnWedge(), shot, offset, covariance);
    }

    /** The classic constant, common practice: 10′ of east offset drift 2.6252″ per minute on the meridian. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 40, -15})
    void longestUnguided_onTheMeridian_isToleranceOverDrift(double decDeg) {
        ImagingRun shot = shot(TINY, at(0, decDeg), 60, UNGUIDED, 2.6252);
        ExposureLimits.Limit limit = longest(LARKFELL, Weather.AIRLESS, shot, AxisOffset.ofArcminutes(10, 0), CERTAIN);
        assertThat(seconds(limit.unguided())).isCloseTo(60, within(0.8));
    }

    /** E = 45019 S cos δ / (T F A), solved for T; derived here, agrees with the form attributed to R. N. Hook 1989. */
    @Test
    void longestGuided_agreesWithToleranceAttributedToHook() {
        double halfDiagonalDeg = Math.toDegrees(Math.atan(Math.hypot(4656, 3520) / 2 * 0.0038 / 1000));
        ImagingRun shot = shot(MAIN, at(0, 45), 60, new Guiding.Guided(Angle.ofDegrees(1)), 2);
        double trailMicrometres = Angle.ofArcseconds(2).radians() * 1e6;
        double expectedMinutes =
                45019 * trailMicrometres * Math.cos(Math.toRadians(45)) / (10 * 1000 * (1 + halfDiagonalDeg));
        ExposureLimits.Limit limit = longest(LARKFELL, Weather.AIRLESS, shot, AxisOffset.ofArcminutes(0, 10), CERTAIN);
        assertThat(seconds(limit.guided()) / 60).isCloseTo(expectedMinutes, within(0.03 * expectedMinutes));
    }

    @Test
    void axisAtThePole_withoutRefraction_isLimitedOnlyByThreeHours() {
        ExposureLimits.Limit limit = longest(
                TUSSOCK_FLAT, Weather.AIRLESS, shot(MAIN, at(-20, -30), 60, UNGUIDED, 2), AxisOffset.NONE, CERTAIN);
        assertThat(limit.unguided()).isEqualTo(ExposureLimits.LONGEST);
        assertThat(limit.guided()).isEqualTo(ExposureLimits.LONGEST);
    }

    @Test
    void axisUncertainty_shortensExposures() {
        ImagingRun shot = shot(MAIN, along(-30, 30, 20), 60, UNGUIDED, 2);
        AxisOffset offset = AxisOffset.ofArcminutes(5, 0);
        ExposureLimits.Limit certain = longest(LARKFELL, MEAN, shot, offset, CERTAIN);
        ExposureLimits.Limit vague = longest(LARKFELL, MEAN, shot, offset, new OffsetCovariance(9, 0, 9));
        // At worst the axis is 5 + 1.65 · 3 arcminutes off.
        double ratio = seconds(certain.unguided()) / seconds(vague.unguided());
        assertThat(ratio).isCloseTo(2, within(0.15));
        assertThat(vague.guided()).isLessThan(certain.guided());
    }

    @Test
    void axisTenDegreesOff_leavesTenthsOfASecond() {
        ExposureLimits.Limit limit = longest(
                LARKFELL, MEAN, shot(MAIN, at(0, 0), 60, UNGUIDED, 2), AxisOffset.ofArcminutes(600, 0), CERTAIN);
        assertThat(seconds(limit.unguided())).isCloseTo(2 / (0.26252 * 600) * 60, within(0.05));
    }

    /**
     * Consistency of the inverse with the zone: with exposures at the limit the present axis is exactly on the edge.
     */
    @Test
    void exposureAtTheLimit_putsTheAxisOnTheEdgeOfTheZone_inBothHemispheres() {
        for (Site site : new Site[] {LARKFELL, TUSSOCK_FLAT}) {
            for (double east : new double[] {-6, 3}) {
                AxisOffset offset = AxisOffset.ofArcminutes(east, 4);
                double dec = 30 * site.hemisphereSign();
                ImagingRun unguided = shot(MAIN, along(-40, 0, dec), 60, UNGUIDED, 2.5);
                ImagingRun guided = unguided.withGuiding(new Guiding.Guided(Angle.ofDegrees(0.7)));
                Duration alone = longest(site, MEAN, unguided, offset, CERTAIN).unguided();
                Duration held = longest(site, MEAN, guided, offset, CERTAIN).guided();
                assertAtEdge(site, unguided, alone, offset);
                assertAtEdge(site, guided, held, offset);
            }
        }
    }

    private static void assertAtEdge(Site site, ImagingRun shot, Duration limit, AxisOffset offset) {
        assertThat(zone(site, MEAN, shot.withSubExposure(scaled(limit, 0.97))).contains(offset))
                .isTrue();
        assertThat(zone(site, MEAN, shot.withSubExposure(scaled(limit, 1.04))).contains(offset))
                .isFalse();
    }

    private static Duration scaled(Duration duration, double factor) {
        return Duration.ofMillis(Math.round(duration.toMillis() * factor));
    }

    private static double seconds(Duration duration) {
        return duration.toMillis() / 1000.0;
    }
}
