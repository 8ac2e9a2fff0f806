package polewright.sky;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlainNumberTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "-0.0, 0",
        "95, 95",
        "12.3456, 12.35",
        "1e7, 10000000",
        "1e-5, 0.00001",
        "NaN, not a number",
        "Infinity, infinity"
    })
    void computedNumbersHaveFourFigures(double value, String text) {
        assertThat(PlainNumber.of(value)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"90.0001, 90.0001", "1100.5, 1100.5", "-361.25, -361.25", "60.0, 60", "NaN, not a number"})
    void typedNumbersKeepTheirFigures(double value, String text) {
        assertThat(PlainNumber.asTyped(value)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"90.0001", "95.3", "359.999999", "-43.95"})
    void degreesConvertedToRadiansAndBack_readAsTyped(String degrees) {
        assertThat(PlainNumber.asTyped(Math.toDegrees(Math.toRadians(Double.parseDouble(degrees)))))
                .isEqualTo(degrees);
    }

    @ParameterizedTest
    @CsvSource({"0.004, 0.004", "7.25, 7.25", "-20.25, -20.25", "6.7968253, 6.8", "0.22009734, 0.22", "146.93271, 147"})
    void readingsKeepTheirFigures_computedOnesHaveThree(double value, String text) {
        assertThat(PlainNumber.asRead(value)).isEqualTo(text);
    }
}
