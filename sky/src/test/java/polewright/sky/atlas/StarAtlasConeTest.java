package polewright.sky.atlas;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.angle.Angle;

/** A search by cells finds exactly the stars that a linear scan finds. */
@Tag("slow")
class StarAtlasConeTest {
    private static final StarField SKY = StarAtlas.bundled().starsWithin(Angle.ZERO, Angle.ZERO, Angle.HALF_TURN, 10.5);

    static Stream<Arguments> cones() {
        Random random = new Random(20260101);
        Stream<Arguments> anywhere = Stream.generate(() -> Arguments.of(
                        360 * random.nextDouble(),
                        Math.toDegrees(Math.asin(2 * random.nextDouble() - 1)),
                        Math.pow(10, -1 + 2.5 * random.nextDouble()),
                        6 + 4.5 * random.nextDouble()))
                .limit(60);
        Stream<Arguments> awkward = Stream.of(
                Arguments.of(0.0, 90.0, 1.5, 10.5),
                Arguments.of(0.0, -90.0, 1.5, 10.5),
                Arguments.of(123.0, 89.2, 1.0, 10.5),
                Arguments.of(300.0, -89.5, 0.5, 10.5),
                Arguments.of(300.0, -88.0, 2.0, 10.5),
                Arguments.of(40.0, 85.0, 5.0, 10.5),
                Arguments.of(0.0, 0.0, 2.0, 10.5),
                Arguments.of(359.999, 45.0, 3.0, 10.5),
                Arguments.of(0.001, -45.0, 3.0, 10.5),
                Arguments.of(-0.5, 60.0, 1.0, 10.5),
                Arguments.of(725.0, 20.0, 1.0, 10.5),
                Arguments.of(180.0, 10.0, 90.0, 7.0),
                Arguments.of(10.0, 70.0, 150.0, 7.0),
                Arguments.of(10.0, -20.0, 180.0, 7.0));
        return Stream.concat(anywhere, awkward);
    }

    @ParameterizedTest
    @MethodSource("cones")
    void searchFindsTheSameStarsAsALinearScan(double raDeg, double decDeg, double radiusDeg, double faintest) {
        Angle ra = Angle.ofDegrees(raDeg);
        Angle dec = Angle.ofDegrees(decDeg);
        Vector3D middle = new Vector3D(dec.cos() * ra.cos(), dec.cos() * ra.sin(), dec.sin());
        TreeSet<Integer> expected = new TreeSet<>();
        for (int i = 0; i < SKY.size(); i++) {
            boolean inside = Vector3D.angle(middle, SKY.direction(i)) <= Math.toRadians(radiusDeg);
            if (inside && SKY.magnitude(i) <= faintest) {
                expected.add(SKY.number(i));
            }
        }
        StarField found = StarAtlas.bundled().starsWithin(ra, dec, Angle.ofDegrees(radiusDeg), faintest);
        TreeSet<Integer> actual = new TreeSet<>();
        for (int i = 0; i < found.size(); i++) {
            actual.add(found.number(i));
        }
        assertThat(actual).isEqualTo(expected);
        assertThat(actual).hasSize(found.size());
    }
}
