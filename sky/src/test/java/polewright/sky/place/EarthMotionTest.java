package polewright.sky.place;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jastronomy.jsofa.JSOFA;
import org.junit.jupiter.api.Test;
import polewright.sky.time.JulianDate;
import polewright.sky.time.SkyTime;

/** Against the full series, as evaluated by SOFA's epv00. */
class EarthMotionTest {
    private static final double METRES_PER_AU = 149_597_870_700.0;
    private static final double SECONDS_PER_DAY = 86_400;

    @Test
    void interpolationMatchesTheSeries_toTenCentimetres() {
        Random random = new Random(8);
        long first = Instant.parse("1972-01-01T00:00:00Z").getEpochSecond();
        long last = Instant.parse("2101-01-01T00:00:00Z").getEpochSecond();
        for (int i = 0; i < 300; i++) {
            JulianDate tt = SkyTime.of(Instant.ofEpochSecond(random.nextLong(first, last)))
                    .inTt();
            double[][] fromSun = new double[2][3];
            double[][] fromBarycentre = new double[2][3];
            JSOFA.jauEpv00(tt.day(), tt.fraction(), fromSun, fromBarycentre);
            EarthMotion motion = EarthMotion.at(tt);
            assertThat(METRES_PER_AU * Vector3D.distance(motion.fromSunAu(), new Vector3D(fromSun[0])))
                    .isLessThan(0.1);
            assertThat(METRES_PER_AU * Vector3D.distance(motion.fromBarycentreAu(), new Vector3D(fromBarycentre[0])))
                    .isLessThan(0.1);
            assertThat(METRES_PER_AU
                            / SECONDS_PER_DAY
                            * Vector3D.distance(motion.velocityAuPerDay(), new Vector3D(fromBarycentre[1])))
                    .isLessThan(1e-4);
        }
    }
}
