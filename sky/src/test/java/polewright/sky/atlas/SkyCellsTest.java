package polewright.sky.atlas;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;

class SkyCellsTest {
    // Half of the largest step, 3600″ / 65536 / 2 = 0.0275″, in two coordinates: 0.039″ on the sky.
    private static final double TOLERANCE_ARCSEC = 0.039;

    @Test
    void positionsRoundTripWithinHalfAStep_allOverTheSky() {
        Random random = new Random(1);
        for (int i = 0; i < 200_000; i++) {
            double ra = 360 * random.nextDouble();
            double dec = Math.toDegrees(Math.asin(2 * random.nextDouble() - 1));
            assertRoundTrip(ra, dec);
        }
    }

    @Test
    void positionsRoundTripWithinHalfAStep_atThePolesAndAtZeroHours() {
        for (double dec : new double[] {-90, -89.999999, -89, 0, 89, 89.999999, 90}) {
            for (double ra : new double[] {0, 1e-9, 359.999999999, 180, Math.nextDown(360.0)}) {
                assertRoundTrip(ra, dec);
            }
        }
    }

    private static void assertRoundTrip(double ra, double dec) {
        int cell = SkyCells.cellAt(ra, dec);
        int zone = SkyCells.zoneAt(dec);
        assertThat(SkyCells.zoneOf(cell)).isEqualTo(zone);
        Angle backRa = Angle.ofDegrees(SkyCells.rightAscensionDeg(zone, cell, SkyCells.eastStep(ra, dec)));
        Angle backDec = Angle.ofDegrees(SkyCells.declinationDeg(zone, SkyCells.northStep(dec)));
        assertThat(Separation.arcsec(Angle.ofDegrees(ra), Angle.ofDegrees(dec), backRa, backDec))
                .as("place %s %s", ra, dec)
                .isLessThan(TOLERANCE_ARCSEC);
    }

    @Test
    void cellsAreAtMostOneDegreeWide() {
        for (int zone = 0; zone < SkyCells.ZONES; zone++) {
            double widest = zone < 90 ? zone - 89 : zone - 90;
            double width = 360.0 / SkyCells.cellsIn(zone) * Math.cos(Math.toRadians(widest));
            assertThat(width).as("zone %s", zone).isLessThanOrEqualTo(1 + 1e-9);
        }
    }
}
