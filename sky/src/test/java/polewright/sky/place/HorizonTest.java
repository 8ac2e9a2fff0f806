package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

class HorizonTest {
    private static Horizon.Point point(double azimuthDeg, double altitudeDeg) {
        return new Horizon.Point(Angle.ofDegrees(azimuthDeg), Angle.ofDegrees(altitudeDeg));
    }

    private static double altitudeAt(Horizon horizon, double azimuthDeg) {
        return horizon.altitudeAt(Angle.ofDegrees(azimuthDeg)).degrees();
    }

    @ParameterizedTest
    @CsvSource({
        "0, 10",
        "45, 15",
        "90, 20",
        "135, 15",
        "180, 10",
        "270, 20",
        "315, 15",
        "359.999, 10.00011",
        "-45, 15",
        "405, 15"
    })
    void horizonIsStraightBetweenCorners_alsoAcrossNorth(double azimuthDeg, double altitudeDeg) {
        Horizon horizon = new Horizon(List.of(point(270, 20), point(0, 10), point(180, 10), point(90, 20)));
        assertThat(altitudeAt(horizon, azimuthDeg)).isCloseTo(altitudeDeg, within(1e-3));
    }

    @Test
    void horizonWithoutCorners_isLevel() {
        assertThat(altitudeAt(Horizon.OPEN, 123)).isZero();
    }

    @Test
    void oneCorner_isAWallAllRound() {
        Horizon horizon = new Horizon(List.of(point(77, 12)));
        assertThat(altitudeAt(horizon, 0)).isCloseTo(12, within(1e-9));
        assertThat(altitudeAt(horizon, 77)).isCloseTo(12, within(1e-9));
        assertThat(altitudeAt(horizon, 256.9)).isCloseTo(12, within(1e-9));
    }

    /** The edge of a roof: two corners, one above the other. */
    @Test
    void twoCornersAtOneAzimuth_areAVerticalEdge() {
        Horizon roof = new Horizon(List.of(point(90, 0), point(90, 30), point(120, 30), point(120, 0)));
        assertThat(altitudeAt(roof, 89.99)).isCloseTo(0, within(1e-6));
        assertThat(altitudeAt(roof, 90.01)).isCloseTo(30, within(1e-6));
        assertThat(altitudeAt(roof, 119.99)).isCloseTo(30, within(1e-6));
        assertThat(altitudeAt(roof, 120.01)).isCloseTo(0, within(1e-6));
    }

    @Test
    void horizonBeyondTheZenith_isRefused() {
        assertThatThrownBy(() -> point(0, 95))
                .isInstanceOf(InputRefused.class)
                .hasMessage("a skyline 95 degrees high is outside -5 to 90. Give pairs of azimuth and altitude in"
                        + " degrees, azimuth first.");
    }
}
