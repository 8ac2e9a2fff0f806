package polewright.alignment.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.SkySetting;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Drift and periodic error from frames of one field. */
class TrackedSequenceTest {
    private static final RotationCovariance GOOD = TurnedCamera.sigmas(0.3, 20);
    private static final double ARCSEC = Math.PI / (180 * 3600);

    /** A mount that tracks a field at the sidereal rate, with an error in arcseconds as a function of minutes. */
    private record Tracking(Site site, AxisPointing axis, Vector3D startsAt, DoubleUnaryOperator driveErrorArcsec) {
        CameraAttitude frame(double minutes) {
            Rotation toField = new Rotation(Vector3D.PLUS_K, Vector3D.PLUS_J, startsAt, startsAt.orthogonal());
            double west =
                    TurnedCamera.SKY_RAD_PER_SECOND * 60 * minutes + driveErrorArcsec.applyAsDouble(minutes) * ARCSEC;
            Rotation turn = new Rotation(axis.northernEnd(site), -west, RotationConvention.VECTOR_OPERATOR);
            return CameraAttitude.of(
                    SkySetting.EVENING.plus(Duration.ofMillis(Math.round(minutes * 60_000))),
                    turn.applyTo(toField),
                    GOOD);
        }

        List<CameraAttitude> frames(double minutes, int count) {
            List<CameraAttitude> frames = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                frames.add(frame(minutes * i / (count - 1)));
            }
            return frames;
        }
    }

    private static Vector3D direction(Site site, double hourAngleDeg, double declinationDeg) {
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(SkySetting.EVENING), Weather.AIRLESS);
        return moment.airless(new HourAnglePlace(Angle.ofDegrees(hourAngleDeg), Angle.ofDegrees(declinationDeg)))
                .enu();
    }

    /** Reference table of the project, exact rotations by an independent library; see authorities/drift/README.md. */
    @ParameterizedTest
    @CsvFileSource(resources = "/authorities/drift/drift_public.csv", numLinesToSkip = 1)
    void drift_agreesWithTheReferenceTable(
            int id,
            double latDeg,
            double azErrArcmin,
            double altErrArcmin,
            double hourAngleDeg,
            double decDeg,
            double minutes,
            double decDriftArcsec,
            double haDriftArcsec,
            double haDriftOnSkyArcsec) {
        Site site = Site.ofDegrees(latDeg, 0, 0);
        AxisPointing axis = AxisPointing.of(
                site.poleAzimuth().plus(Angle.ofArcminutes(azErrArcmin)),
                site.poleAltitude().plus(Angle.ofArcminutes(altErrArcmin)));
        Vector3D field = direction(site, hourAngleDeg, decDeg);
        TrackedSequence sequence =
                TrackedSequence.of(site, Weather.AIRLESS, new Tracking(site, axis, field, m -> 0).frames(minutes, 21));

        // The table uses the mount's own north, which is the sky's rotated by the axis's offset.
        double north = sequence.north().perMinute().arcseconds() * minutes;
        double east = sequence.east().perMinute().arcseconds() * minutes;
        Vector3D skyNorth = tangent(field, AxisPointing.atPole(site).northernEnd(site));
        Vector3D mountNorth = tangent(field, axis.northernEnd(site));
        double turned =
                Math.atan2(mountNorth.dotProduct(skyNorth.crossProduct(field)), mountNorth.dotProduct(skyNorth));
        // A straight line through the curved track differs from the difference of its ends by a few parts in a
        // thousand.
        assertThat(north * Math.cos(turned) + east * Math.sin(turned))
                .as("misalignment %d", id)
                .isCloseTo(decDriftArcsec, within(0.02 + 0.002 * Math.hypot(decDriftArcsec, haDriftOnSkyArcsec)));
        assertThat(east * Math.cos(turned) - north * Math.sin(turned))
                .as("misalignment %d", id)
                .isCloseTo(-haDriftOnSkyArcsec, within(0.02 + 0.002 * Math.hypot(decDriftArcsec, haDriftOnSkyArcsec)));
        assertThat(sequence.worm().peakToPeak().arcseconds()).isLessThan(1 + 0.05 * Math.abs(haDriftOnSkyArcsec));
    }

    private static Vector3D tangent(Vector3D at, Vector3D toward) {
        return toward.subtract(at.scalarMultiply(toward.dotProduct(at))).normalize();
    }

    /**
     * With refraction and an imperfect drive: the sighting's residual vanishes at the true axis, to hundredths of an
     * arcsecond.
     */
    @ParameterizedTest
    @CsvSource({
        "54.60, 40, -25, -10, 20, 30",
        "54.60, 40, -25, -80, 40, 30",
        "-43.95, -300, 200, 60, -50, 20",
        "-43.95, 15, 8, 5, 10, 90",
        "54.60, 600, 400, -30, 75, 60"
    })
    void sightingResidual_vanishesAtTheTrueAxis(
            double latDeg, double east, double up, double hourAngleDeg, double decDeg, double minutes) {
        Site site = Site.ofDegrees(latDeg, 0, 200);
        Weather air = Weather.standardAt(200);
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(east, up));
        Tracking tracking =
                new Tracking(site, axis, direction(site, hourAngleDeg, decDeg), m -> 0.4 * m + 12 * Math.sin(m));
        TrackedSequence sequence = TrackedSequence.of(site, air, tracking.frames(minutes, 41));
        FieldDrift drift = FieldDrift.of(sequence);
        double restArcsec = drift.model(site, air).residual(axis.elevatedEnd())[0]
                * drift.northSigma().arcseconds();
        assertThat(restArcsec)
                .isCloseTo(0, within(0.05 + 0.001 * drift.north().abs().arcseconds()));
        double hourAngle = Math.toRadians(hourAngleDeg);
        AxisPointing elsewhere = AxisPointing.of(
                site, AxisOffset.ofArcminutes(east + 5 * Math.cos(hourAngle), up + 5 * Math.sin(hourAngle)));
        assertThat(Math.abs(drift.model(site, air).residual(elsewhere.elevatedEnd())[0]))
                .isGreaterThan(10);
    }

    /** The periodic error, its period and the steady rate, with noise. */
    @ParameterizedTest
    @CsvSource({"54.60, 20, 480, 12, 12", "-43.95, -55, 240, 6, 12", "54.60, 60, 638, 20, 25"})
    void periodicErrorAndRate_areFound(
            double latDeg, double decDeg, double periodSeconds, double amplitudeArcsec, double minutes) {
        Site site = Site.ofDegrees(latDeg, 0, 200);
        AxisPointing axis = AxisPointing.atPole(site);
        Random random = new Random(5);
        double rateArcsecPerMinute = 1.5;
        Tracking tracking = new Tracking(
                site,
                axis,
                direction(site, -20, decDeg),
                m -> rateArcsecPerMinute * m + amplitudeArcsec * Math.sin(2 * Math.PI * m * 60 / periodSeconds + 1));
        List<CameraAttitude> frames = tracking.frames(minutes, 121).stream()
                .map(f -> TurnedCamera.noisy(f, random))
                .toList();
        TrackedSequence sequence = TrackedSequence.of(site, Weather.AIRLESS, frames);
        PeriodicError worm = sequence.worm();
        double cosDec = Math.cos(Math.toRadians(decDeg));
        assertThat(worm.wave()).isPresent();
        PeriodicError.Wave wave = worm.wave().orElseThrow();
        assertThat(wave.period().toMillis() / 1000.0).isCloseTo(periodSeconds, within(0.01 * periodSeconds));
        assertThat(worm.atEquator(wave.amplitude()).arcseconds()).isCloseTo(amplitudeArcsec, within(0.4));
        assertThat(worm.peakToPeak().arcseconds())
                .isBetween(2 * amplitudeArcsec * cosDec - 0.5, 2 * amplitudeArcsec * cosDec + 3);
        assertThat(worm.rms().arcseconds())
                .isCloseTo(amplitudeArcsec * cosDec / Math.sqrt(2), within(0.12 * amplitudeArcsec));
        // A mount that runs fast goes west, and leaves the stars in the east of its picture.
        assertThat(sequence.east().perMinute().arcseconds())
                .isCloseTo(
                        rateArcsecPerMinute * cosDec,
                        within(5 * sequence.east().sigmaPerMinute().arcseconds()));
        assertThat(sequence.east().sigmaPerMinute().arcseconds()).isLessThan(0.05);
        assertThat(sequence.north().perMinute().arcseconds())
                .isCloseTo(0, within(4 * sequence.north().sigmaPerMinute().arcseconds()));
    }

    @Test
    void noiseAlone_showsNoPeriodicError_andRateSigmasAreHonest() {
        Site site = Site.ofDegrees(-43.95, 0, 200);
        AxisPointing axis = AxisPointing.of(site, AxisOffset.ofArcminutes(12, -9));
        Tracking tracking = new Tracking(site, axis, direction(site, -20, -30), m -> 0.3 * m);
        TrackedSequence exact = TrackedSequence.of(site, Weather.AIRLESS, tracking.frames(10, 31));
        Random random = new Random(8);
        int trials = 400;
        int waves = 0;
        int north = 0;
        int east = 0;
        for (int i = 0; i < trials; i++) {
            TrackedSequence noisy = TrackedSequence.of(
                    site,
                    Weather.AIRLESS,
                    tracking.frames(10, 31).stream()
                            .map(f -> TurnedCamera.noisy(f, random))
                            .toList());
            waves += noisy.worm().wave().isPresent() ? 1 : 0;
            north += within95(noisy.north(), exact.north()) ? 1 : 0;
            east += within95(noisy.east(), exact.east()) ? 1 : 0;
        }
        assertThat(waves).isLessThanOrEqualTo(3);
        // The scatter is never taken to be less than the stars' noise, so the region is rather too wide than too
        // narrow.
        assertThat(100.0 * north / trials).isBetween(93.0, 98.5);
        assertThat(100.0 * east / trials).isBetween(93.0, 98.5);
    }

    private static boolean within95(TrackedSequence.Drift noisy, TrackedSequence.Drift exact) {
        return noisy.perMinute().minus(exact.perMinute()).abs().radians()
                < 1.96 * noisy.sigmaPerMinute().radians();
    }

    /** Seeing and wind scatter the frames far beyond the stars' noise: the scatter is used. */
    @Test
    void scatterBeyondTheFramesOwnUncertainty_widensTheRateSigma() {
        Site site = Site.ofDegrees(54.6, 0, 200);
        Tracking tracking = new Tracking(site, AxisPointing.atPole(site), direction(site, 0, 20), m -> 0);
        Random random = new Random(8);
        List<CameraAttitude> shaken = tracking.frames(10, 31).stream()
                .map(f -> TurnedCamera.disturbed(f, 3 * random.nextGaussian(), 3 * random.nextGaussian(), 0))
                .toList();
        double calm = TrackedSequence.of(site, Weather.AIRLESS, tracking.frames(10, 31))
                .north()
                .sigmaPerMinute()
                .arcseconds();
        double uneasy = TrackedSequence.of(site, Weather.AIRLESS, shaken)
                .north()
                .sigmaPerMinute()
                .arcseconds();
        assertThat(uneasy / calm).isBetween(6.0, 16.0);
    }

    @Test
    void stationaryMount_isRefused() {
        Site site = Site.ofDegrees(54.6, 0, 200);
        Tracking standing =
                new Tracking(site, AxisPointing.atPole(site), direction(site, 0, 20), m -> -15.041067 * 60 * m);
        assertThatThrownBy(() -> TrackedSequence.of(site, Weather.AIRLESS, standing.frames(10, 11)))
                .isInstanceOf(InputRefused.class)
                .hasMessage(
                        "the mount turned 0.00 degrees while the sky turned 2.51: it did not track the field. Switch"
                                + " the drive on, check the times of the frames, and leave the slow motions alone.");
    }

    @Test
    void tooFewFramesAndTooShortSequences_areRefused() {
        Site site = Site.ofDegrees(54.6, 0, 200);
        Tracking tracking = new Tracking(site, AxisPointing.atPole(site), direction(site, 0, 20), m -> 0);
        assertThatThrownBy(() -> TrackedSequence.of(site, Weather.AIRLESS, tracking.frames(10, 2)))
                .hasMessage(
                        "2 frames are too few for a drift. Keep tracking and take three or more over some minutes.");
        assertThatThrownBy(() -> TrackedSequence.of(site, Weather.AIRLESS, tracking.frames(0.5, 11)))
                .hasMessage("a sequence of 0.5 minutes is outside 1 to 360. Track one field for five to fifteen"
                        + " minutes.");
    }
}
