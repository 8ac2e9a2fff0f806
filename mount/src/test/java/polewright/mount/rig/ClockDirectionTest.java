package polewright.mount.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

class ClockDirectionTest {
    @ParameterizedTest
    @CsvSource({"12, 0", "3, 90", "4.5, 135", "6, 180", "9, 270", "11.9, 357"})
    void hoursAreThirtyDegreesClockwiseFromTheTop(double hours, double degrees) {
        assertThat(new ClockDirection(hours).clockwiseFromTop().degrees()).isEqualTo(degrees, within(1e-9));
        assertThat(ClockDirection.ofAngle(Angle.ofDegrees(degrees)).hours()).isEqualTo(hours, within(1e-9));
    }

    @Test
    void topIsTwelve_forAnyWholeTurn() {
        assertThat(new ClockDirection(0)).isEqualTo(new ClockDirection(12));
        assertThat(new ClockDirection(-0.0)).isEqualTo(new ClockDirection(12));
        assertThat(ClockDirection.ofAngle(Angle.ZERO).hours()).isEqualTo(12);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-18, -90, 359.9999999999999, 360, 719, -3600})
    void everyAngleHasAClockDirection(double degrees) {
        ClockDirection direction = ClockDirection.ofAngle(Angle.ofDegrees(degrees));

        assertThat(direction.hours()).isGreaterThan(0).isLessThanOrEqualTo(12);
        assertThat(direction
                        .clockwiseFromTop()
                        .minus(Angle.ofDegrees(degrees))
                        .wrappedSigned()
                        .degrees())
                .isEqualTo(0, within(1e-9));
    }

    @Test
    void hoursOffTheClockFace_areRefused() {
        assertThatThrownBy(() -> new ClockDirection(13))
                .isInstanceOf(InputRefused.class)
                .hasMessage("clock direction 13 is outside 0 to 12. 12 is the top of the view, 3 its right edge;"
                        + " 4.5 is half past four.");
        assertThatThrownBy(() -> new ClockDirection(-1)).isInstanceOf(InputRefused.class);
        assertThatThrownBy(() -> new ClockDirection(Double.NaN)).isInstanceOf(InputRefused.class);
    }
}
