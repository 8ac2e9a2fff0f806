package polewright.alignment.sighting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static polewright.alignment.sighting.SkySetting.EVENING;
import static polewright.alignment.sighting.SkySetting.LARKFELL;
import static polewright.alignment.sighting.SkySetting.starAt;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import polewright.mount.AxisPointing;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

class GroundSightingTest {
    private static final Angle ONE_DEGREE = Angle.ofDegrees(1);

    private static double residual(Sighting sighting, double azimuthDeg, double altitudeDeg) {
        Vector3D axis = AxisPointing.of(Angle.ofDegrees(azimuthDeg), Angle.ofDegrees(altitudeDeg))
                .elevatedEnd();
        return sighting.model(LARKFELL, Weather.AIRLESS).residual(axis)[0];
    }

    @Test
    void trueAzimuth_isTheBearingPlusTheDeclination_eastPositive() {
        // Common practice: variation east, compass least.
        Sighting compass = new CompassBearing(EVENING, Angle.ofDegrees(358), Angle.ofDegrees(3), ONE_DEGREE);
        assertThat(residual(compass, 1, 54)).isCloseTo(0, within(1e-9));
        assertThat(residual(compass, 359, 54)).isCloseTo(-2, within(1e-9));
    }

    @Test
    void scale_isTheAltitudeOfTheAxis() {
        assertThat(residual(new LevelledScale(EVENING, Angle.ofDegrees(54), ONE_DEGREE), 10, 55.5))
                .isCloseTo(1.5, within(1e-9));
    }

    @Test
    void shadow_fallsAwayFromTheBody() {
        FixedStar lamp = starAt(LARKFELL, EVENING, -40, 10);
        ObservingMoment moment = ObservingMoment.of(LARKFELL, SkyTime.of(EVENING), Weather.AIRLESS);
        double azimuth = moment.airless(moment.apparent(lamp.star())).azimuth().degrees();
        Sighting shadow = new BodyBearing(EVENING, lamp, BodyBearing.Line.SHADOW, Angle.ofDegrees(25), ONE_DEGREE);
        assertThat(residual(shadow, azimuth + 180 + 25, 54)).isCloseTo(0, within(1e-6));
        Sighting toward =
                new BodyBearing(EVENING, lamp, BodyBearing.Line.TOWARD_BODY, Angle.ofDegrees(-25), ONE_DEGREE);
        assertThat(residual(toward, azimuth - 25, 54)).isCloseTo(0, within(1e-6));
    }

    @Test
    void altitudeRelativeToAStar_isAddedToTheStars() {
        FixedStar star = starAt(LARKFELL, EVENING, 0, 10);
        double starAltitude = 90 - 54.60 + 10;
        Sighting difference = new BodyAltitude(EVENING, star, Angle.ofDegrees(8.6), ONE_DEGREE);
        assertThat(residual(difference, 0, starAltitude + 8.6)).isCloseTo(0, within(1e-4));
    }

    @Test
    void sightingAlongTheBaseAtTheSun_isRefused() {
        assertThatThrownBy(() -> new BodyBearing(
                        EVENING, SolarSystemBody.SUN, BodyBearing.Line.TOWARD_BODY, Angle.ZERO, ONE_DEGREE))
                .isInstanceOf(InputRefused.class)
                .hasMessage(
                        "sighting along the base at the Sun can blind you. Use the shadow of a plumb line instead.");
        assertThatThrownBy(() -> new BodyAltitude(EVENING, SolarSystemBody.SUN, Angle.ZERO, ONE_DEGREE))
                .isInstanceOf(InputRefused.class)
                .hasMessage("never point the tube at the Sun. Use a star, or a shadow for the azimuth.");
    }

    @Test
    void bearingOfABodyNearTheZenith_isRefused() {
        FixedStar overhead = starAt(LARKFELL, EVENING, 0, 52);
        Sighting bearing = new BodyBearing(EVENING, overhead, BodyBearing.Line.TOWARD_BODY, Angle.ZERO, ONE_DEGREE);
        assertThatThrownBy(() -> bearing.model(LARKFELL, Weather.AIRLESS))
                .isInstanceOf(InputRefused.class)
                .hasMessage("a test star was above 80 degrees, where its azimuth is too uncertain. Take a lower star,"
                        + " or wait.");
    }
}
