package polewright.session.jsonl;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.allowance.DiscAllowance;
import polewright.mount.rig.Rig;
import polewright.session.RandomEvents;
import polewright.session.event.EventKind;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.fields.AngleUnit;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.Digits;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

@Tag("slow")
class RoundTripTest {
    // Records compare doubles by their bits, so equality means exactness.

    @ParameterizedTest
    @EnumSource(EventKind.class)
    void everyKindRoundTripsToTheSameBits(EventKind kind) {
        RandomEvents random = new RandomEvents(kind.word().hashCode());
        for (int i = 0; i < 500; i++) {
            LoggedEvent event = new LoggedEvent(9, Instant.ofEpochSecond(1_768_512_600L + i, i), random.event(kind, 9));
            assertThat(EventKind.of(event.event())).isEqualTo(kind);
            String line = JsonLines.write(event);
            assertThat(line).doesNotContain("\n", "\r");
            assertThat(JsonLines.readLine(line, 0, BodyNames.NONE)).isEqualTo(event);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void wholeNightRoundTripsThroughItsFile(long seed) throws IOException {
        List<LoggedEvent> night = new RandomEvents(seed).night(200);
        StringBuilder file = new StringBuilder();
        JsonLines.write(night, file);
        assertThat(JsonLines.read(new StringReader(file.toString()), BodyNames.NONE))
                .isEqualTo(new Reading.Accepted(night));
    }

    @ParameterizedTest
    @EnumSource(AngleUnit.class)
    void everyAngleHasADecimalInEveryUnit(AngleUnit unit) {
        Random random = new Random(20260115);
        for (int i = 0; i < 20_000; i++) {
            double radians = (random.nextDouble() - 0.5) * 4 * Math.PI * Math.pow(10, -random.nextInt(18));
            assertSame(unit, radians);
            assertSame(unit, Math.nextUp(radians));
        }
        for (double radians : new double[] {0, -0.0, Double.MIN_VALUE, -Double.MIN_VALUE, Math.PI, 2 * Math.PI}) {
            assertSame(unit, radians);
        }
    }

    private static void assertSame(AngleUnit unit, double radians) {
        String digits = unit.write(new Angle(radians));
        assertThat(Double.doubleToRawLongBits(unit.read(digits).radians()))
                .as("%s radians as %s %s", radians, digits, unit.words())
                .isEqualTo(Double.doubleToRawLongBits(radians));
    }

    @Test
    void typedNumber_isTheAngleOfTheFactoryMethod() {
        for (double degrees : new double[] {54.6, -2.9, -43.95, 170.4, 279.23473479, 1e-5, 0.1}) {
            String digits = AngleUnit.DEGREES.write(Angle.ofDegrees(degrees));
            assertThat(digits).isEqualTo(Digits.of(degrees));
            assertThat(AngleUnit.DEGREES.read(digits)).isEqualTo(Angle.ofDegrees(degrees));
        }
    }

    @Test
    void site_isWrittenAsTyped_inBothHemispheres() {
        assertThat(begin("Larkfell", Site.ofDegrees(54.6, -2.9, 240)))
                .contains("\"site\":{\"lat_deg\":54.6,\"lon_deg\":-2.9,\"height_m\":240}");
        assertThat(begin("Tussock Flat", Site.ofDegrees(-43.95, 170.4, 710)))
                .contains("\"site\":{\"lat_deg\":-43.95,\"lon_deg\":170.4,\"height_m\":710}");
    }

    private static String begin(String name, Site site) {
        return JsonLines.write(new LoggedEvent(
                1,
                Instant.parse("2026-01-15T18:00:00Z"),
                new NightEvent.Begun(
                        name,
                        site,
                        Weather.standardAt(site.heightMetres()),
                        Rig.typicalForkOnWedge(),
                        DiscAllowance.VISUAL)));
    }
}
