package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WeatherTest {
    /**
     * ICAO standard atmosphere (Doc 7488) by geopotential height, as the library ambiance computes it (232032bbac7a).
     */
    @ParameterizedTest
    @CsvSource({"0, 1013.25", "1000, 898.75", "2000, 794.95", "4000, 616.40"})
    void meanPressureFallsWithHeight(double metres, double hpa) {
        assertThat(Weather.standardAt(metres).pressureHpa()).isCloseTo(hpa, within(0.1));
    }

    @ParameterizedTest
    @CsvSource({"-500", "9000"})
    void everySiteHasMeanWeather(double metres) {
        assertThat(Weather.standardAt(metres).pressureHpa()).isBetween(300.0, 1080.0);
    }
}
