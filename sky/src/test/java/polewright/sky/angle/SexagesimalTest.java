package polewright.sky.angle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class SexagesimalTest {
    static DoubleStream anglesJustUnderAWholeMinute() {
        var random = new SplittableRandom(60);
        return DoubleStream.generate(() -> random.nextInt(-89 * 60, 89 * 60) / 60.0 - 1e-9)
                .limit(200);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0, +00°00′00″",
        "-6.7198917, 1, -06°43′11.6″",
        "-0.5, 0, -00°30′00″",
        "12.99999, 1, +13°00′00.0″",
        "59.9999999, 2, +60°00′00.00″",
        "-89.99999, 0, -90°00′00″"
    })
    void degreesAreWrittenWithSignAndCarry(double degrees, int decimals, String expected) {
        assertThat(Sexagesimal.degrees(Angle.ofDegrees(degrees), decimals)).isEqualTo(expected);
    }

    @Test
    void negativeAngleThatRoundsToZeroHasNoMinus() {
        assertThat(Sexagesimal.degrees(Angle.ofArcseconds(-0.04), 1)).isEqualTo("+00°00′00.0″");
    }

    @Test
    void secondsOf59Point999CarryIntoTheMinute() {
        assertThat(Sexagesimal.degrees(Angle.ofDegrees(10 + 59 / 60.0 + 59.999 / 3600), 2))
                .isEqualTo("+11°00′00.00″");
        assertThat(Sexagesimal.hours(Angle.ofHours(10 + 58 / 60.0 + 59.999 / 3600), 1))
                .isEqualTo("10h59m00.0s");
    }

    @Test
    void hoursThatRoundUpToMidnightWrapToZero() {
        assertThat(Sexagesimal.hours(Angle.ofHours(23 + 59 / 60.0 + 59.99 / 3600), 1))
                .isEqualTo("00h00m00.0s");
        assertThat(Sexagesimal.hours(Angle.ofHours(23 + 59 / 60.0 + 59.99 / 3600), 2))
                .isEqualTo("23h59m59.99s");
    }

    @Test
    void negativeHoursAreWrittenFromZeroToTwentyFour() {
        assertThat(Sexagesimal.hours(Angle.ofHours(-1), 0)).isEqualTo("23h00m00s");
        assertThat(Sexagesimal.hours(new Angle(-1e-20), 0)).isEqualTo("00h00m00s");
    }

    @ParameterizedTest
    @MethodSource("anglesJustUnderAWholeMinute")
    void secondsNeverPrintAsSixty(double degrees) {
        assertThat(Sexagesimal.degrees(Angle.ofDegrees(degrees), 2)).doesNotContain("60.00″");
        assertThat(Sexagesimal.hours(Angle.ofHours(degrees / 4), 2)).doesNotContain("60.00s");
    }

    @Test
    void decimalsOutsideZeroToNine_areRejected() {
        assertThatThrownBy(() -> Sexagesimal.degrees(Angle.ZERO, 10))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("decimals 10 outside 0 to 9");
    }
}
