package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

class RefusalsTest {
    @ParameterizedTest
    @CsvSource({"95, 95", "-90.5, -90.5", "91.3, 91.3", "90.0001, 90.0001", "NaN, not a number"})
    void impossibleLatitudeIsRefused(double degrees, String shown) {
        assertThatThrownBy(() -> Site.ofDegrees(degrees, 0, 0))
                .isInstanceOf(InputRefused.class)
                .hasMessage("latitude " + shown
                        + " is beyond 90 degrees. Give degrees from -90 (south) to 90 (north), latitude"
                        + " before longitude.");
    }

    @ParameterizedTest
    @CsvSource({"400, 400", "-361.25, -361.25", "NaN, not a number"})
    void impossibleLongitudeIsRefused(double degrees, String shown) {
        assertThatThrownBy(() -> Site.ofDegrees(0, degrees, 0))
                .isInstanceOf(InputRefused.class)
                .hasMessage("longitude " + shown
                        + " is beyond 360 degrees. Give degrees, east positive, from -180 to 180.");
    }

    @ParameterizedTest
    @CsvSource({"9001, 9001", "-501.5, -501.5", "NaN, not a number"})
    void impossibleHeightIsRefused(double metres, String shown) {
        assertThatThrownBy(() -> Site.ofDegrees(0, 0, metres))
                .isInstanceOf(InputRefused.class)
                .hasMessage("height " + shown + " m is outside -500 to 9000 m. Give metres above sea level.");
    }

    @Test
    void longitudesBeyond180Degrees_wrapAround() {
        assertThat(Site.ofDegrees(54.6, 357.1, 240).longitude().degrees()).isCloseTo(-2.9, within(1e-12));
    }

    @Test
    void polesAreValidSites() {
        assertThat(Site.ofDegrees(90, 0, 0).isNorthern()).isTrue();
        assertThat(Site.ofDegrees(-90, 0, 2800).isNorthern()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"-1.0, -1", "1100.5, 1100.5", "NaN, not a number"})
    void impossiblePressureIsRefused(double hpa, String shown) {
        assertThatThrownBy(() -> new Weather(hpa, 10, 0.5))
                .isInstanceOf(InputRefused.class)
                .hasMessage("pressure " + shown
                        + " is outside 0 to 1100 hPa. Give the pressure at the site in hPa (millibars), not"
                        + " inches or mmHg.");
    }

    @ParameterizedTest
    @CsvSource({"-273.0, -273", "61.0, 61", "NaN, not a number"})
    void impossibleTemperatureIsRefused(double celsius, String shown) {
        assertThatThrownBy(() -> new Weather(1010, celsius, 0.5))
                .isInstanceOf(InputRefused.class)
                .hasMessage("temperature " + shown + " is outside -80 to 60 C. Give degrees Celsius.");
    }

    @ParameterizedTest
    @CsvSource({"-0.1, -0.1", "60.0, 60", "NaN, not a number"})
    void impossibleHumidityIsRefused(double humidity, String shown) {
        assertThatThrownBy(() -> new Weather(1010, 10, humidity))
                .isInstanceOf(InputRefused.class)
                .hasMessage("relative humidity " + shown + " is outside 0 to 1. Give a fraction, 0.6 for 60 %.");
    }

    @Test
    void impossibleDeclinationIsRefused() {
        assertThatThrownBy(() -> CatalogueStar.fixed(Angle.ofDegrees(10), Angle.ofDegrees(95)))
                .isInstanceOf(InputRefused.class)
                .hasMessage("declination 95 is beyond 90 degrees. Give right ascension first, then declination, in"
                        + " degrees.");
    }
}
