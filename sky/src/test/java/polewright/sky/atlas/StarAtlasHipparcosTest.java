package polewright.sky.atlas;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;

/** Atlas positions against Hipparcos positions; authorities/hipparcos-places/README.md gives their source. */
class StarAtlasHipparcosTest {
    @Test
    void starsToV8_agreeWithHipparcosWithinRounding() {
        List<Double> apart = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        for (String[] row : Authority.rows("hipparcos-places/places.csv")) {
            Angle ra = Angle.ofDegrees(Double.parseDouble(row[1]));
            Angle dec = Angle.ofDegrees(Double.parseDouble(row[2]));
            double nearest = nearestArcsec(ra, dec, Double.parseDouble(row[3]));
            if (Double.isNaN(nearest)) {
                missing.add(row[0]);
            } else {
                apart.add(nearest);
            }
        }
        Collections.sort(apart);
        assertThat(missing)
                .as("Hipparcos numbers without a star of the atlas within 12″")
                .isEmpty();
        assertThat(apart).hasSize(427);
        // Rounding of the check file: 0.15″ RMS, 0.26″ at most; of the atlas: 0.04″ at most.
        assertThat(apart.get(apart.size() / 2)).as("median, arcsec").isLessThan(0.16);
        assertThat(apart.get(apart.size() * 97 / 100)).as("97 in 100, arcsec").isLessThan(0.35);
        // The rest: double stars, of which one source lists the pair and the other a component.
        assertThat(apart.get(apart.size() - 1)).as("furthest, arcsec").isLessThan(12);
    }

    private static double nearestArcsec(Angle ra, Angle dec, double magnitude) {
        StarField near = StarAtlas.bundled().starsWithin(ra, dec, Angle.ofArcseconds(12), magnitude + 1.5);
        double nearest = Double.NaN;
        for (int i = 0; i < near.size(); i++) {
            double apart = Separation.arcsec(ra, dec, near.rightAscension(i), near.declination(i));
            nearest = Double.isNaN(nearest) ? apart : Math.min(nearest, apart);
        }
        return nearest;
    }
}
