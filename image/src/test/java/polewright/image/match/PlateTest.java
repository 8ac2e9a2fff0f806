package polewright.image.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlateTest {
    static Plate random(Random dice, boolean bent) {
        Rotation turn = new Rotation(
                new Vector3D(dice.nextGaussian(), dice.nextGaussian(), dice.nextGaussian()),
                dice.nextDouble() * 6,
                RotationConvention.VECTOR_OPERATOR);
        double[] inU = new double[Distortion.TERMS];
        double[] inV = new double[Distortion.TERMS];
        for (int i = 0; bent && i < Distortion.TERMS; i++) {
            inU[i] = 3 * dice.nextGaussian();
            inV[i] = 3 * dice.nextGaussian();
        }
        Distortion distortion = bent
                ? new Distortion(1e-3 * dice.nextGaussian(), 1e-3 * dice.nextGaussian(), inU, inV)
                : Distortion.NONE;
        return new Plate(
                1936,
                1216,
                dice.nextBoolean(),
                turn.applyTo(Vector3D.PLUS_I),
                turn.applyTo(Vector3D.PLUS_J),
                turn.applyTo(Vector3D.PLUS_K),
                1500 + 20000 * dice.nextDouble(),
                distortion);
    }

    @RepeatedTest(50)
    void pixel_roundTripsThroughTheSky(RepetitionInfo repetition) {
        Random dice = new Random(repetition.getCurrentRepetition());
        Plate plate = random(dice, true);
        double x = dice.nextDouble() * 1935;
        double y = dice.nextDouble() * 1215;
        PixelPlace back = plate.toPixel(plate.toSky(x, y)).orElseThrow();
        assertThat(back.x()).isCloseTo(x, within(1e-4));
        assertThat(back.y()).isCloseTo(y, within(1e-4));
    }

    @RepeatedTest(20)
    void directionBehindTheCamera_hasNoPixel(RepetitionInfo repetition) {
        Plate plate = random(new Random(repetition.getCurrentRepetition()), true);
        assertThat(plate.toPixel(plate.centre().negate())).isEmpty();
    }

    // North up means roll 0; a picture whose top looks east of north has its roll counted eastward.
    @ParameterizedTest
    @CsvSource({"0, 0", "90, 90", "-30, 330", "180, 180"})
    void roll_isThePositionAngleOfUp(double upEastOfNorthDeg, double rollDeg) {
        Vector3D centre = new Vector3D(Math.toRadians(77), Math.toRadians(-33));
        Vector3D east = Vector3D.crossProduct(Vector3D.PLUS_K, centre).normalize();
        Vector3D north = Vector3D.crossProduct(centre, east);
        double up = Math.toRadians(upEastOfNorthDeg);
        Vector3D down = new Vector3D(-Math.cos(up), north, -Math.sin(up), east);
        Plate plate =
                new Plate(100, 80, false, Vector3D.crossProduct(down, centre), down, centre, 1000, Distortion.NONE);
        double off = plate.roll().degrees() - rollDeg;
        assertThat(Math.sin(Math.toRadians(off))).isCloseTo(0, within(1e-12));
        assertThat(Math.cos(Math.toRadians(off))).isCloseTo(1, within(1e-12));
    }

    /** As seen from below the sky, east is to the left when north is up (common practice). */
    @Test
    void east_isLeftOfNorthUnlessMirrored() {
        Vector3D centre = new Vector3D(1.0, 0.2);
        Vector3D east = Vector3D.crossProduct(Vector3D.PLUS_K, centre).normalize();
        Vector3D down = Vector3D.crossProduct(centre, east).negate();
        Vector3D right = Vector3D.crossProduct(down, centre);
        Plate plain = new Plate(100, 80, false, right, down, centre, 1000, Distortion.NONE);
        Plate mirrored = new Plate(100, 80, true, right, down, centre, 1000, Distortion.NONE);
        Vector3D eastward = new Vector3D(1, centre, 0.01, east);
        assertThat(plain.toPixel(eastward).orElseThrow().x()).isLessThan(49);
        assertThat(mirrored.toPixel(eastward).orElseThrow().x()).isGreaterThan(50);
    }
}
