package polewright.simulation.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.Frame;

class SkyConditionsTest {
    private static final Night NIGHT = Night.TUSSOCK_FLAT;

    private static RenderedFrame under(SkyConditions sky) {
        return Night.RENDERER.renderWithoutNoise(NIGHT.exposure(
                Night.wideCamera(), CameraPath.standing(NIGHT.toward("Antares", 0)), sky, Duration.ofMillis(500)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, 2.5, 4})
    void cloudsOverHalf_hideStarsOnTheirSide_andGlow(double direction) {
        RenderedFrame clear = under(SkyConditions.EVEN);
        RenderedFrame clouded = under(SkyConditions.EVEN.with(CloudBank.overHalf(direction)));

        double corner = Math.hypot(300, 240);
        for (int i = 0; i < clear.truth().stars().size(); i++) {
            TrueStar star = clear.truth().stars().get(i);
            double share = clouded.truth().stars().get(i).electrons() / star.electrons();
            double along =
                    ((star.x() - 299.5) * Math.cos(direction) + (star.y() - 239.5) * Math.sin(direction)) / corner;
            if (along > 0.15) {
                assertThat(share).isZero();
            } else if (along < -0.15) {
                assertThat(share).isEqualTo(1);
            }
        }
        int hidden = (int) clouded.truth().stars().stream()
                .filter(star -> star.electrons() == 0)
                .count();
        assertThat((double) hidden / clouded.truth().stars().size()).isBetween(0.3, 0.7);
        double reach = 0.5 * 240 / corner * corner;
        assertThat(level(clouded.frame(), direction, reach) / level(clouded.frame(), direction, -reach))
                .isCloseTo(1.6, within(0.05));
    }

    /** Lowest of a few pixels at a place along a direction from the centre, above the bias: background, not a star. */
    private static double level(Frame frame, double direction, double reach) {
        double least = Double.MAX_VALUE;
        for (int i = -20; i <= 20; i++) {
            int x = (int) Math.round(299.5 + reach * Math.cos(direction) - i * Math.sin(direction));
            int y = (int) Math.round(239.5 + reach * Math.sin(direction) + i * Math.cos(direction));
            least = Math.min(least, frame.pixels()[y * 600 + x] - 500.0);
        }
        return least;
    }

    @Test
    void gradient_brightensOneSide() {
        SkyConditions sky = new SkyConditions(
                SkyConditions.EVEN.seeing(), 18, 0.2, Math.PI / 2, 0, java.util.Optional.empty(), List.of());

        Frame frame = under(sky).frame();

        double below = level(frame, Math.PI / 2, 200);
        double above = level(frame, Math.PI / 2, -200);
        double corner = Math.hypot(300, 240);
        assertThat(below / above).isCloseTo((1 + 0.2 * 200 / corner) / (1 - 0.2 * 200 / corner), within(0.005));
    }

    @Test
    void satellite_crossesThePicture_withTheGivenBrightness() {
        SimulatedCamera camera = Night.wideCamera();
        SatelliteTrail trail = new SatelliteTrail(-50, 100, 650, 140, 4000);

        Frame clear = under(SkyConditions.EVEN).frame();
        Frame crossed = under(SkyConditions.EVEN.with(List.of(trail))).frame();

        for (int column = 5; column < 600; column += 60) {
            double sum = 0;
            double moment = 0;
            for (int row = 0; row < 480; row++) {
                double light = crossed.pixels()[row * 600 + column] - clear.pixels()[row * 600 + column];
                sum += light;
                moment += light * row;
            }
            // A column cuts the line obliquely: a little more than a pixel of its length.
            double slant = Math.hypot(700, 40) / 700;
            assertThat(sum).isCloseTo(4000 * slant, within(20.0));
            assertThat(moment / sum).isCloseTo(100 + (column + 50) * 40 / 700.0, within(0.01));
        }
        assertThat(camera.optics().haloFraction()).isZero();
    }

    @Test
    void randomSatellite_crossesThePicture() {
        SimulatedCamera camera = Night.wideCamera();
        Random random = new Random(4);
        for (int i = 0; i < 50; i++) {
            SatelliteTrail trail = SatelliteTrail.across(camera, 1000, random);
            assertThat(inside(trail.x0(), trail.y0())).isFalse();
            assertThat(inside(trail.x1(), trail.y1())).isFalse();
            assertThat(inside((trail.x0() + trail.x1()) / 2, (trail.y0() + trail.y1()) / 2))
                    .isTrue();
        }
    }

    private static boolean inside(double x, double y) {
        return x > 0 && x < 600 && y > 0 && y < 480;
    }
}
