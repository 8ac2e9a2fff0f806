package polewright.operations.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;

class SkylineInputTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "0,8\n95,22.5\n180,4\n",
                "azimuth,altitude\n0,8\n95,22.5\n180,4",
                "# the garden\n\n0;8\r\n95;22.5\r\n180;4\r\n",
                "\uFEFFAzimuth\tAltitude\n0\t8\n95\t22.5\n180\t4\n",
                "0 8\n95   22.5\n180 4\n",
                "0°, 8°\n95°, 22.5°\n180°, 4°"
            })
    void tablesOfEveryKind_areRead(String text) {
        Horizon horizon = SkylineInput.ofCsv(text);
        assertThat(horizon.points()).hasSize(3);
        assertThat(horizon.altitudeAt(Angle.ofDegrees(95)).degrees()).isCloseTo(22.5, within(1e-9));
    }

    @Test
    void badLine_isNamedWithItsNumber() {
        assertThatThrownBy(() -> SkylineInput.ofCsv("az,alt\n# trees\n0,8\n95,high\n"))
                .isInstanceOf(InputRefused.class)
                .hasMessage("line 4: '95,high' is not a skyline corner. Write azimuth,altitude in degrees, azimuth from"
                        + " north through east; for example 95,22.5.");
        assertThatThrownBy(() -> SkylineInput.ofCsv("400,8"))
                .hasMessage("line 1: an azimuth of 400 degrees is outside 0 to 360. Count from north through east,"
                        + " azimuth before altitude.");
        assertThatThrownBy(() -> SkylineInput.ofCsv("8,0\n22,95"))
                .hasMessage("line 2: a skyline 95 degrees high is outside -5 to 90. Give pairs of azimuth and altitude"
                        + " in degrees, azimuth first.");
    }

    @Test
    void emptyFile_isRefused() {
        assertThatThrownBy(() -> SkylineInput.ofCsv("# nothing\n"))
                .hasMessage("it has no skyline corners. Write azimuth,altitude in degrees, one corner per line.");
    }
}
