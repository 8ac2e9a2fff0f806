package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.Random;
import org.jastronomy.jsofa.JSOFA;
import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;
import polewright.sky.time.JulianDate;
import polewright.sky.time.SkyTime;

/** Against the full IAU 2000A series with the adjustments of 2006, as evaluated by SOFA's nut06a. */
class NutationTest {
    private static final double MICROARCSECONDS = 1e6;

    @Test
    void interpolationMatchesTheSeries_toAFifthOfAMicroarcsecond() {
        Random random = new Random(7);
        long first = Instant.parse("1972-01-01T00:00:00Z").getEpochSecond();
        long last = Instant.parse("2101-01-01T00:00:00Z").getEpochSecond();
        for (int i = 0; i < 300; i++) {
            JulianDate tt = SkyTime.of(Instant.ofEpochSecond(random.nextLong(first, last)))
                    .inTt();
            Nutation nutation = Nutation.at(tt);
            var series = JSOFA.jauNut06a(tt.day(), tt.fraction());
            assertThat(microarcseconds(nutation.longitudeRad() - series.dpsi)).isCloseTo(0, within(0.2));
            assertThat(microarcseconds(nutation.obliquityRad() - series.deps)).isCloseTo(0, within(0.2));
        }
    }

    private static double microarcseconds(double radians) {
        return new Angle(radians).arcseconds() * MICROARCSECONDS;
    }
}
