package polewright.session;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.camera.Drive;
import polewright.alignment.sighting.BodyAltitude;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.ReticleNorth;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StarTrail;
import polewright.alignment.sighting.StillPoint;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.rig.ClockDirection;
import polewright.session.event.EventKind;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.body.SolarSystemBody;

/** Sightings of every kind. */
final class RandomSightings {
    private final RandomValues values;
    private final Random random;

    RandomSightings(RandomValues values) {
        this.values = values;
        random = values.random();
    }

    Sighting sighting(EventKind kind) {
        return switch (kind) {
            case COMPASS ->
                new CompassBearing(
                        values.instant(), values.signed(2 * Math.PI), values.signed(Math.PI), values.sigma(60));
            case SCALE -> new LevelledScale(values.instant(), values.signed(Math.PI / 2), values.sigma(60));
            case BEARING ->
                new BodyBearing(
                        values.instant(),
                        values.star(),
                        BodyBearing.Line.TOWARD_BODY,
                        values.signed(2 * Math.PI),
                        values.sigma(60));
            case SHADOW ->
                new BodyBearing(
                        values.instant(),
                        SolarSystemBody.SUN,
                        BodyBearing.Line.SHADOW,
                        values.signed(2 * Math.PI),
                        values.sigma(60));
            case ALTITUDE ->
                new BodyAltitude(values.instant(), values.bodyButTheSun(), values.signed(Math.PI), values.sigma(60));
            case STILL_POINT ->
                new StillPoint(
                        values.instant(),
                        values.bodyButTheSun(),
                        length(),
                        values.clock(),
                        values.view(),
                        values.sigma(20));
            case DRIFT ->
                new StarDrift(
                        values.instant(),
                        Duration.ofNanos(1 + (long) (random.nextDouble() * 6 * 3600e9)),
                        values.bodyButTheSun(),
                        length(),
                        direction(),
                        values.sigma(5));
            case TRAIL ->
                new StarTrail(values.instant(), values.bodyButTheSun(), values.signed(Math.PI / 3), values.sigma(60));
            case FRAMES -> frames();
            case FIELD_DRIFT ->
                new FieldDrift(
                        values.instant(),
                        Duration.ofNanos(1 + (long) (random.nextDouble() * 6 * 3600e9)),
                        values.signed(2 * Math.PI),
                        values.signed(Math.PI / 2),
                        values.signed(Math.toRadians(5)),
                        values.signed(Math.toRadians(5)),
                        values.sigma(5),
                        values.sigma(5));
            default -> throw new IllegalArgumentException(kind + " is not a sighting");
        };
    }

    /** Each rotated about an arbitrary direction by more than a degree, some minutes apart. */
    TurnedFrames frames() {
        Instant first = values.instant();
        Vector3D about = new Vector3D(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
        Rotation turn = new Rotation(about, 0.02 + random.nextDouble(), RotationConvention.VECTOR_OPERATOR);
        List<CameraAttitude> frames = new ArrayList<>();
        Rotation attitude = new Rotation(
                values.number(-1, 1), values.number(-1, 1), values.number(-1, 1), values.number(0.1, 1), true);
        for (int i = 0; i < 2 + random.nextInt(4); i++) {
            frames.add(CameraAttitude.of(
                    first.plusSeconds(1 + 60L * i).plusNanos(random.nextInt(1000)), attitude, covariance()));
            attitude = turn.applyTo(attitude);
        }
        return new TurnedFrames(
                frames,
                random.nextBoolean()
                        ? Optional.empty()
                        : Optional.of(CameraAttitude.of(first.plusSeconds(1000), attitude, covariance())),
                values.oneOf(Drive.values()));
    }

    RotationCovariance covariance() {
        double x = values.number(0.1, 30);
        double y = values.number(0.1, 30);
        double z = values.number(1, 900);
        return random.nextBoolean()
                ? new RotationCovariance(x, -0.0, 0, y, 0, z)
                : new RotationCovariance(
                        x,
                        0.3 * Math.sqrt(x * y) * random.nextDouble(),
                        -0.3 * Math.sqrt(x * z) * random.nextDouble(),
                        y,
                        0.3 * Math.sqrt(y * z) * random.nextDouble(),
                        z);
    }

    DriftDirection direction() {
        return switch (random.nextInt(3)) {
            case 0 ->
                new DriftDirection.OnSky(
                        random.nextBoolean(), List.of(ReticleNorth.values()).get(random.nextInt(3)));
            case 1 -> new DriftDirection.TowardEdge(values.clock(), values.view());
            default ->
                new DriftDirection.TowardEdgeGivenWest(
                        new ClockDirection(values.number(2, 4)),
                        new ClockDirection(values.number(11, 12)),
                        random.nextBoolean());
        };
    }

    ReadLength length() {
        double count = values.number(0, 1);
        return switch (random.nextInt(4)) {
            case 0 -> ReadLength.ofArcseconds(count * 300);
            case 1 -> ReadLength.ofDivisions(count * 20, values.sigma(0.1));
            case 2 -> ReadLength.ofField(count, values.sigma(40));
            default -> ReadLength.ofPixels(count * 900, values.sigma(0.01));
        };
    }
}
