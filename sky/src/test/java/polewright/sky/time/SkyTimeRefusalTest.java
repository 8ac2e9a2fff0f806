package polewright.sky.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.InputRefused;

class SkyTimeRefusalTest {
    private static final Instant TONIGHT = Instant.parse("2026-11-20T21:00:00Z");

    @ParameterizedTest
    @CsvSource({"1.2, 1.2", "-0.95, -0.95", "NaN, not a number"})
    void impossibleUt1MinusUtcIsRefused(double seconds, String shown) {
        assertThatThrownBy(() -> new SkyTime(TONIGHT, seconds))
                .isInstanceOf(InputRefused.class)
                .hasMessage("UT1-UTC of " + shown
                        + " s is beyond 0.9 s. Give the value of the IERS bulletin in seconds, or leave it out.");
    }

    @ParameterizedTest
    @CsvSource({"1969-07-20T20:17:00Z", "2126-01-01T00:00:00Z"})
    void yearOutsideTheTablesIsRefused(Instant utc) {
        assertThatThrownBy(() -> SkyTime.of(utc))
                .isInstanceOf(InputRefused.class)
                .hasMessage("the time " + utc + " is outside 1972 to 2100. Check the year.");
    }

    @Test
    void ut1MinusUtcDefaultsToZero() {
        assertThat(SkyTime.of(TONIGHT).ut1MinusUtcSeconds()).isZero();
    }

    @Test
    void refusalCanNameTheLineOfTheInput() {
        assertThat(new InputRefused("drift of 0 minutes", "give how long you watched").at("line 12"))
                .hasMessage("line 12: drift of 0 minutes. Give how long you watched.");
    }
}
