package polewright.mount.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** Against brute force: every point of the cylinder's surface, rotated about the declination axis. */
@Tag("slow")
class ForkClearanceTest {
    private static final ForkClearance CAMERA = new ForkClearance(310, 360, 290, 45, 125);

    @ParameterizedTest
    @ValueSource(doubles = {1, 10, 45, 80, 150})
    void farthestDeclination_isWhereTheBackFirstTouchesTheBase(double radius) {
        ForkClearance fork = new ForkClearance(310, 360, 290, radius, radius);
        double touching = firstTouch(310, 360, radius);
        assertThat(fork.towardPole().orElseThrow().degrees()).isCloseTo(touching, within(0.011));
    }

    @Test
    void cameraStopsShortOfThePole_bareTubeReachesIt() {
        assertThat(CAMERA.towardPole().orElseThrow().degrees()).isBetween(50.0, 54.0);
        assertThat(new ForkClearance(310, 180, 290, 90, 125).towardPole()).isEmpty();
    }

    @Test
    void tubeLongerInFrontThanTheArmDepth_isLimitedBeyondTheEquator() {
        assertThat(new ForkClearance(310, 180, 500, 90, 125).beyondEquator()).isPresent();
        assertThat(new ForkClearance(310, 180, 200, 90, 125).beyondEquator()).isEmpty();
    }

    /** With zero radius the end is a point: L sin δ = D, the textbook triangle. */
    @Test
    void thinTube_stopsWhereLengthTimesSineEqualsDepth() {
        Optional<Angle> farthest = new ForkClearance(300, 600, 0, 0, 0).towardPole();
        assertThat(farthest.orElseThrow().degrees()).isCloseTo(30, within(1e-9));
    }

    @Test
    void armsThatCannotHoldATube_areRefused() {
        assertThatThrownBy(() -> new ForkClearance(100, 300, 300, 45, 125))
                .isInstanceOf(InputRefused.class)
                .hasMessage("arms 100 mm deep cannot hold a tube of 125 mm half width. Measure from the declination"
                        + " axis to"
                        + " the fork's base.");
    }

    /** In hundredths of a degree; the tube's axis in the (equator, pole) plane, the base at −depth along the pole. */
    private static double firstTouch(double depth, double length, double radius) {
        for (int hundredths = 0; hundredths <= 9000; hundredths++) {
            double declination = Math.toRadians(hundredths / 100.0);
            Vector3D tube = new Vector3D(Math.cos(declination), 0, Math.sin(declination));
            Vector3D across = new Vector3D(-Math.sin(declination), 0, Math.cos(declination));
            for (int along = 0; along <= 4; along++) {
                for (int around = 0; around < 360; around++) {
                    double angle = Math.toRadians(around);
                    Vector3D point = new Vector3D(
                            -length * along / 4,
                            tube,
                            radius * Math.cos(angle),
                            across,
                            radius * Math.sin(angle),
                            Vector3D.PLUS_J);
                    if (point.getZ() < -depth) {
                        return hundredths / 100.0;
                    }
                }
            }
        }
        return Double.NaN;
    }
}
