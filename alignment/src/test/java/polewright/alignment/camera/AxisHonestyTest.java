package polewright.alignment.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.assertj.core.data.Percentage;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.mount.AxisEstimate;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.Tangents;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.Site;

/** The stated uncertainty is the actual one. */
class AxisHonestyTest {
    private static final double CHI_SQUARED_95_OF_ONE = 3.841;
    private static final double CHI_SQUARED_95_OF_TWO = 5.991;

    private static AxisFromFrames noisyAxis(
            TurnedCamera camera, double[] westDeg, RotationCovariance c, Random random) {
        List<CameraAttitude> frames = new ArrayList<>();
        for (double west : westDeg) {
            frames.add(TurnedCamera.noisy(camera.frame(west, 70.0 * frames.size(), c), random));
        }
        return AxisFromFrames.of(camera.site(), frames);
    }

    /**
     * Three frames 30 degrees apart, anywhere in the sky. With this many trials the coverage of 95 % has a standard
     * error of 1 % (500) or 0.3 % (5000).
     */
    @ParameterizedTest
    @CsvSource({
        "54.60, 38, 25, 1, 20, 500, 93, 97",
        "-43.95, -55, 31, 1, 20, 500, 93, 97",
        "54.60, 38, 25, 1, 20, 5000, 94, 96",
        "-43.95, -55, 31, 1, 20, 5000, 94, 96",
        "54.60, 600, -400, 0.5, 60, 5000, 94, 96",
        "-43.95, -600, 400, 0.5, 60, 5000, 94, 96"
    })
    void region95_holds95Percent_inAzimuthInAltitudeAndTogether(
            double latitudeDeg,
            double east,
            double up,
            double centre,
            double roll,
            int trials,
            double fewest,
            double most) {
        Site site = Site.ofDegrees(latitudeDeg, 0, 200);
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(east, up));
        RotationCovariance c = TurnedCamera.sigmas(centre, roll);
        Random random = new Random(20261125);
        int azimuth = 0;
        int altitude = 0;
        int both = 0;
        for (int i = 0; i < trials; i++) {
            TurnedCamera camera = TurnedCamera.of(site, axis, 5 + 80 * random.nextDouble(), 360 * random.nextDouble());
            double west = -60 + 60 * random.nextDouble();
            AxisFromFrames found = noisyAxis(camera, new double[] {west, west + 30, west + 60}, c, random);
            double azimuthError =
                    found.axis().azimuth().minus(axis.azimuth()).wrappedSigned().radians()
                            / found.estimate().azimuthSigma().radians();
            double altitudeError =
                    found.axis().altitude().minus(axis.altitude()).radians()
                            / found.estimate().altitudeSigma().radians();
            azimuth += azimuthError * azimuthError < CHI_SQUARED_95_OF_ONE ? 1 : 0;
            altitude += altitudeError * altitudeError < CHI_SQUARED_95_OF_ONE ? 1 : 0;
            both += found.covariance().normalisedSquare(found.offset().minus(axis.offset(site))) < CHI_SQUARED_95_OF_TWO
                    ? 1
                    : 0;
        }
        assertThat(new double[] {100.0 * azimuth / trials, 100.0 * altitude / trials, 100.0 * both / trials})
                .as("azimuth, altitude, both, in percent")
                .satisfies(shares -> assertThat(DoubleStream.of(shares).boxed())
                        .allSatisfy(share -> assertThat(share).isBetween(fewest, most)));
    }

    /** Closed forms derived outside this project. */
    @ParameterizedTest
    @CsvSource({
        "2, 60, 50, 90, 46, 2",
        "1, 30, 20, 30, 28.4, 2.73",
        "1, 30, 3, 60, 2.6, 1.41",
        "1, 30, 90, 60, 42.4, 1.41"
    })
    void twoFrames_haveTheUncertaintyOfTheClosedForm_andOfMonteCarlo(
            double centre,
            double roll,
            double polarDistance,
            double turn,
            double radialByHand,
            double tangentialByHand) {
        double p = Math.toRadians(polarDistance);
        double lever = Math.sqrt(2) * Math.sin(Math.toRadians(turn) / 2);
        double radial = Math.hypot(centre * Math.cos(p), roll * Math.sin(p)) / lever;
        double tangential = centre / lever;
        assertThat(radial).isCloseTo(radialByHand, Percentage.withPercentage(1.5));
        assertThat(tangential).isCloseTo(tangentialByHand, Percentage.withPercentage(1.5));

        Site site = Site.ofDegrees(54.6, 0, 200);
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(30, 20));
        TurnedCamera camera = TurnedCamera.of(site, axis, polarDistance, 33);
        double[] west = {-20 - turn / 2, -20 + turn / 2};
        Vector3D middle = camera.frame(-20, 35, TurnedCamera.sigmas(1, 1)).boresight();
        Vector3D toMiddle = middle.subtract(axis.elevatedEnd().scalarMultiply(middle.dotProduct(axis.elevatedEnd())))
                .normalize();
        Vector3D across = axis.elevatedEnd().crossProduct(toMiddle);
        Random random = new Random(11);
        RotationCovariance c = TurnedCamera.sigmas(centre, roll);
        double sumRadial = 0;
        double sumTangential = 0;
        int trials = 4000;
        for (int i = 0; i < trials; i++) {
            Vector3D error =
                    noisyAxis(camera, west, c, random).axis().elevatedEnd().subtract(axis.elevatedEnd());
            sumRadial += Math.pow(error.dotProduct(toMiddle), 2);
            sumTangential += Math.pow(error.dotProduct(across), 2);
        }
        double toArcsec = 180 * 3600 / Math.PI;
        assertThat(toArcsec * Math.sqrt(sumRadial / trials)).isCloseTo(radial, Percentage.withPercentage(5));
        assertThat(toArcsec * Math.sqrt(sumTangential / trials)).isCloseTo(tangential, Percentage.withPercentage(5));

        AxisFromFrames exact =
                AxisFromFrames.of(site, List.of(camera.frame(west[0], 0, c), camera.frame(west[1], 70, c)));
        assertThat(sigma(exact, toMiddle)).isCloseTo(radial, Percentage.withPercentage(0.1));
        assertThat(sigma(exact, across)).isCloseTo(tangential, Percentage.withPercentage(0.1));
    }

    /** Three centres alone, steps of D: sqrt(3/2) σ/(1 − cos D) and σ/(√2 sin D), at any distance from the axis. */
    @ParameterizedTest
    @CsvSource({"45, 4.2, 1.0", "30, 9.1, 1.4"})
    void threeFramesOfUnknownRoll_haveTheUncertaintyOfThreeCentres(
            double step, double alongByHand, double acrossByHand) {
        Site site = Site.ofDegrees(-43.95, 0, 200);
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(-30, 20));
        TurnedCamera camera = TurnedCamera.of(site, axis, 60, 33);
        RotationCovariance noRoll = TurnedCamera.sigmas(1, 3e4);
        AxisFromFrames found = AxisFromFrames.of(
                site,
                List.of(
                        camera.frame(10 - step, 0, noRoll),
                        camera.frame(10, 60, noRoll),
                        camera.frame(10 + step, 120, noRoll)));
        Vector3D middle = camera.frame(10, 60, noRoll).boresight();
        Vector3D along = middle.subtract(axis.elevatedEnd().scalarMultiply(middle.dotProduct(axis.elevatedEnd())))
                .normalize();
        assertThat(sigma(found, along)).isCloseTo(alongByHand, within(0.06));
        assertThat(sigma(found, axis.elevatedEnd().crossProduct(along))).isCloseTo(acrossByHand, within(0.06));
    }

    /** 1 sigma of the axis along a perpendicular direction, arcsec. */
    private static double sigma(AxisFromFrames found, Vector3D along) {
        AxisEstimate c = found.estimate();
        Tangents tangents = Tangents.rightAndUp(c.axis().elevatedEnd());
        double right = along.dotProduct(tangents.first());
        double up = along.dotProduct(tangents.second());
        return Math.sqrt(right * right * c.rightRightArcsec2()
                + 2 * right * up * c.rightUpArcsec2()
                + up * up * c.upUpArcsec2());
    }
}
