package polewright.simulation.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.sky.InputRefused;
import polewright.sky.place.CatalogueStar;

class DistortionTest {
    @ParameterizedTest
    @CsvSource({"-0.1", "0.05", "0.14"})
    void corner_movesByTheCoefficient(double radial) {
        Night night = Night.LARKFELL;
        SimulatedCamera straight = Night.wideCamera();
        SimulatedCamera bent = straight.with(straight.optics().withDistortion(Distortion.radial(radial)));
        SkyView straightView = SkyView.of(night.tracked(straight, night.toward("Polaris", 0), 1), 0);
        SkyView bentView = SkyView.of(night.tracked(bent, night.toward("Polaris", 0), 1), 0);
        CatalogueStar atCorner = straightView.icrsAt(599.5, 479.5);

        var seen = bentView.pixelOf(atCorner).orElseThrow();

        assertThat(seen.getX() - 299.5).isCloseTo(300 * (1 + radial), within(1e-3));
        assertThat(seen.getY() - 239.5).isCloseTo(240 * (1 + radial), within(1e-3));
    }

    @Test
    void centre_isUnchanged() {
        double[] uv = {0, 0};
        new Distortion(0.1, 0.01, -0.01).apply(uv);
        assertThat(uv).containsExactly(0, 0);
    }

    @Test
    void tangentialTerms_shiftInTheirNamedDirections() {
        double[] down = {0, 1};
        new Distortion(0, 0.01, 0).apply(down);
        double[] right = {1, 0};
        new Distortion(0, 0, 0.01).apply(right);

        assertThat(down).containsExactly(new double[] {0, 1.03}, within(1e-12));
        assertThat(right).containsExactly(new double[] {1.03, 0}, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"-0.14, 0, 0", "0.14, 0.02, -0.02", "-0.05, 0.003, 0.001", "0, 0, 0", "0, 0.01, 0"})
    void undo_invertsApply(double radial, double down, double right) {
        Distortion distortion = new Distortion(radial, down, right);
        for (double u = -1; u <= 1; u += 0.25) {
            for (double v = -0.8; v <= 0.8; v += 0.2) {
                double[] uv = {u, v};
                distortion.apply(uv);
                distortion.undo(uv);
                assertThat(uv[0]).isCloseTo(u, within(1e-11));
                assertThat(uv[1]).isCloseTo(v, within(1e-11));
            }
        }
    }

    @Test
    void farOutside_nothingFoldsBackIntoThePicture() {
        Distortion barrel = Distortion.radial(-0.14);
        double last = 0;
        for (double r = 0; r < 12; r += 0.05) {
            double[] uv = {r, 0};
            barrel.apply(uv);
            assertThat(uv[0]).isGreaterThanOrEqualTo(last);
            last = uv[0];
        }
    }

    @Test
    void excessiveCoefficient_isRefused() {
        assertThatThrownBy(() -> Distortion.radial(-0.3))
                .isInstanceOf(InputRefused.class)
                .hasMessage("a radial distortion of -0.3 at the corner is beyond 0.14. Give the shift at the corner"
                        + " over its distance from the centre, -0.05 for a wide lens.");
    }
}
