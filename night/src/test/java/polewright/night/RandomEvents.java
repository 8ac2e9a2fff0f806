package polewright.night;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.axis.AxisOffset;
import polewright.axis.allowance.DiscAllowance;
import polewright.axis.camera.Drive;
import polewright.axis.pointing.CentredStar;
import polewright.axis.pointing.MountDisplay;
import polewright.axis.rig.Camera;
import polewright.axis.rig.ClockDirection;
import polewright.axis.rig.Experience;
import polewright.axis.rig.FinishSense;
import polewright.axis.rig.ForkClearance;
import polewright.axis.rig.MountKind;
import polewright.axis.rig.Optic;
import polewright.axis.rig.Orientation;
import polewright.axis.rig.Rig;
import polewright.axis.rig.RightAscensionDrive;
import polewright.axis.rig.Screw;
import polewright.axis.rig.ScrewGeometry;
import polewright.axis.rig.ScrewOrder;
import polewright.axis.rig.ScrewSense;
import polewright.axis.rig.TrackingRate;
import polewright.axis.rig.TravelLimits;
import polewright.axis.rig.View;
import polewright.axis.rig.Worm;
import polewright.axis.sighting.BodyAltitude;
import polewright.axis.sighting.BodyBearing;
import polewright.axis.sighting.CompassBearing;
import polewright.axis.sighting.DriftDirection;
import polewright.axis.sighting.FieldDrift;
import polewright.axis.sighting.LevelledScale;
import polewright.axis.sighting.ReadLength;
import polewright.axis.sighting.Sighting;
import polewright.axis.sighting.StarDrift;
import polewright.axis.sighting.StillPoint;
import polewright.axis.sighting.TurnedFrames;
import polewright.axis.work.Guiding;
import polewright.axis.work.Look;
import polewright.axis.work.Shot;
import polewright.axis.work.SkyRegion;
import polewright.axis.work.Work;
import polewright.axis.work.WorkItem;
import polewright.night.event.EventKind;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Events of every kind from a seed, with values of every sort: round, odd, tiny, negative zero; south and north. */
public final class RandomEvents {
    private static final Instant FIRST = Instant.parse("1972-01-01T00:00:00Z");
    private static final long SPAN_SECONDS = 128L * 365 * 86400;
    private static final String[] TEXTS = {
        "Larkfell",
        "Tussock Flat",
        "quote \" and \\ backslash",
        "two\nlines\tand a tab",
        "ψ Ursae Majoris 🔭",
        "\u0000\u2028"
    };

    private static final EventKind[] AFTER_THE_BEGIN =
            EnumSet.complementOf(EnumSet.of(EventKind.BEGIN)).toArray(EventKind[]::new);

    private final Random random;

    public RandomEvents(long seed) {
        this.random = new Random(seed);
    }

    /** A begin and then {@code more} events, all kinds about equally often. */
    public List<LoggedEvent> night(int more) {
        List<LoggedEvent> night = new ArrayList<>();
        night.add(new LoggedEvent(1, instant(), event(EventKind.BEGIN, 1)));
        for (int seq = 2; seq <= more + 1; seq++) {
            EventKind kind = oneOf(AFTER_THE_BEGIN);
            if (seq == 2
                    && EnumSet.of(EventKind.WITHDRAW, EventKind.CORRECT_TURN, EventKind.CORRECT_CLOCK)
                            .contains(kind)) {
                kind = EventKind.NOTE;
            }
            night.add(new LoggedEvent(seq, instant(), event(kind, seq)));
        }
        return night;
    }

    /** An event of this kind that can stand at {@code seq}. */
    public NightEvent event(EventKind kind, int seq) {
        return switch (kind) {
            case BEGIN ->
                new NightEvent.Begun(
                        text(),
                        new Site(signed(Math.toRadians(84)), signed(Math.PI), number(-500, 9000)),
                        new Weather(number(0, 1100), number(-80, 60), number(0, 1)),
                        rig(),
                        allowance());
            case COMPASS, SCALE, BEARING, SHADOW, ALTITUDE, STILL_POINT, DRIFT, FRAMES, FIELD_DRIFT ->
                new NightEvent.SightingTaken(sighting(kind));
            case TURN ->
                new NightEvent.ScrewsTurned(
                        number(-90, 90),
                        random.nextBoolean() ? 0.25 : -0.0,
                        random.nextBoolean() ? number(-10, 10) : -0.0,
                        random.nextBoolean() ? -0.75 : 0);
            case CORRECT_TURN ->
                new NightEvent.TurnCorrected(
                        2 + random.nextInt(Math.max(1, seq - 2)), new NightEvent.ScrewsTurned(number(-90, 90), -0.0));
            case CORRECT_CLOCK ->
                new NightEvent.ClockCorrected(
                        1, 1 + random.nextInt(seq - 1), Duration.ofSeconds(1 + random.nextInt(90_000)));
            case CLAMP -> new NightEvent.Clamped();
            case UNCLAMP -> new NightEvent.Unclamped();
            case KNOCK -> new NightEvent.Knocked();
            case ALLOW -> new NightEvent.AllowanceSet(allowance());
            case WORK -> new NightEvent.WorkSet(work());
            case CENTRE -> new NightEvent.StarCentred(centred());
            case HORIZON -> new NightEvent.HorizonSet(horizon());
            case TARGET -> new NightEvent.TargetWanted(random.nextBoolean() ? star() : bodyButTheSun());
            case NOTE -> new NightEvent.Noted(text());
            case WITHDRAW -> new NightEvent.Withdrawn(2 + random.nextInt(Math.max(1, seq - 2)));
        };
    }

    private CentredStar centred() {
        MountDisplay display = random.nextBoolean()
                ? new MountDisplay.HourAngle(signed(Math.PI), signed(Math.PI / 2))
                : new MountDisplay.RightAscension(signed(2 * Math.PI), signed(Math.PI / 2), random.nextBoolean());
        return new CentredStar(instant(), bodyButTheSun(), display, random.nextBoolean(), sigma(5));
    }

    private Horizon horizon() {
        List<Horizon.Point> points = new ArrayList<>();
        for (int i = random.nextInt(5); i > 0; i--) {
            points.add(new Horizon.Point(signed(2 * Math.PI), new Angle(number(0, 1.5))));
        }
        return new Horizon(points);
    }

    private TravelLimits travel() {
        if (random.nextBoolean()) {
            return TravelLimits.USUAL;
        }
        Optional<ForkClearance> fork = random.nextBoolean()
                ? Optional.empty()
                : Optional.of(new ForkClearance(
                        number(200, 400), number(0, 500), number(0, 900), number(0, 150), number(0, 150)));
        return new TravelLimits(
                Angle.ofDegrees(-number(0, 180)), new Angle(number(0, 3)), new Angle(number(0, 1.3)), fork);
    }

    private Sighting sighting(EventKind kind) {
        return switch (kind) {
            case COMPASS -> new CompassBearing(instant(), signed(2 * Math.PI), signed(Math.PI), sigma(60));
            case SCALE -> new LevelledScale(instant(), signed(Math.PI / 2), sigma(60));
            case BEARING ->
                new BodyBearing(instant(), star(), BodyBearing.Line.TOWARD_BODY, signed(2 * Math.PI), sigma(60));
            case SHADOW ->
                new BodyBearing(
                        instant(), SolarSystemBody.SUN, BodyBearing.Line.SHADOW, signed(2 * Math.PI), sigma(60));
            case ALTITUDE -> new BodyAltitude(instant(), bodyButTheSun(), signed(Math.PI), sigma(60));
            case STILL_POINT -> new StillPoint(instant(), bodyButTheSun(), length(), clock(), view(), sigma(20));
            case DRIFT ->
                new StarDrift(
                        instant(),
                        Duration.ofNanos(1 + (long) (random.nextDouble() * 6 * 3600e9)),
                        bodyButTheSun(),
                        length(),
                        direction(),
                        sigma(5));
            case FRAMES -> frames();
            case FIELD_DRIFT ->
                new FieldDrift(
                        instant(),
                        Duration.ofNanos(1 + (long) (random.nextDouble() * 6 * 3600e9)),
                        signed(2 * Math.PI),
                        signed(Math.PI / 2),
                        signed(Math.toRadians(5)),
                        signed(Math.toRadians(5)),
                        sigma(5),
                        sigma(5));
            default -> throw new IllegalArgumentException(kind + " is no sighting");
        };
    }

    /** Turned about any direction by more than a degree each, some minutes apart. */
    private TurnedFrames frames() {
        Instant first = instant();
        Vector3D about = new Vector3D(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
        Rotation turn = new Rotation(about, 0.02 + random.nextDouble(), RotationConvention.VECTOR_OPERATOR);
        List<CameraAttitude> frames = new ArrayList<>();
        Rotation attitude = new Rotation(number(-1, 1), number(-1, 1), number(-1, 1), number(0.1, 1), true);
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
                oneOf(Drive.values()));
    }

    private RotationCovariance covariance() {
        double x = number(0.1, 30);
        double y = number(0.1, 30);
        double z = number(1, 900);
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

    private Rig rig() {
        List<Optic> optics = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            optics.add(new Optic(
                    i + text(), sigma(60), view(), random.nextBoolean() ? Optional.of(sigma(0.1)) : Optional.empty()));
        }
        List<Camera> cameras = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            cameras.add(new Camera(
                    "camera " + i + text(),
                    number(1, 20_000),
                    number(0.5, 100),
                    64 + random.nextInt(9000),
                    64 + random.nextInt(9000)));
        }
        return new Rig(
                text(),
                oneOf(new MountKind[] {MountKind.FORK_ON_WEDGE, MountKind.GERMAN, MountKind.TRACKER}),
                screw(random.nextBoolean() ? ScrewSense.LEFT : ScrewSense.RIGHT),
                screw(random.nextBoolean() ? ScrewSense.RAISES : ScrewSense.LOWERS),
                sigma(20),
                sigma(20),
                optics,
                cameras,
                oneOf(ScrewOrder.values()),
                new RightAscensionDrive(
                        oneOf(TrackingRate.values()),
                        new Worm(sigma(0.1), Duration.ofSeconds(10).plusNanos(random.nextLong(3_000_000_000_000L)))),
                travel(),
                random.nextBoolean()
                        ? Optional.empty()
                        : Optional.of(new Experience(
                                random.nextInt(9),
                                number(0.1, 2),
                                number(0.001, 1),
                                number(-1, 2),
                                number(0.001, 1),
                                random.nextInt(9),
                                new AxisOffset(signed(0.1), signed(0.1)),
                                sigma(1))));
    }

    private Work work() {
        List<WorkItem> items = new ArrayList<>();
        for (int i = 1 + random.nextInt(3); i > 0; i--) {
            items.add(random.nextBoolean() ? look(i + text()) : shot(i + text()));
        }
        return new Work(items);
    }

    private Look look(String name) {
        return new Look(
                name, sigma(60), Duration.ofNanos(1 + random.nextLong(43_200_000_000_000L)), finding(), region());
    }

    private Look.Finding finding() {
        return switch (random.nextInt(3)) {
            case 0 -> new Look.Finding.GoTo(sigma(30));
            case 1 -> new Look.Finding.ByHand();
            default -> new Look.Finding.Centred();
        };
    }

    private Shot shot(String name) {
        Duration exposure = Duration.ofNanos(1 + random.nextLong(10_800_000_000_000L));
        return new Shot(
                name,
                new Camera("camera " + text(), number(1, 20_000), number(0.5, 100), 1000, 700),
                region(),
                exposure,
                exposure.plusNanos(random.nextLong(10_000_000_000_000L)),
                random.nextBoolean() ? new Guiding.Unguided() : new Guiding.Guided(sigma(20)),
                Angle.ofArcseconds(number(0.06, 3000)));
    }

    private SkyRegion region() {
        Angle from = signed(Math.PI);
        return random.nextBoolean()
                ? new SkyRegion.Above(Angle.ofDegrees(number(5, 85)), random.nextBoolean())
                : new SkyRegion.Track(text(), signed(Math.PI / 2), from, from.plus(sigma(120)));
    }

    private Screw screw(ScrewSense sense) {
        ScrewGeometry geometry = switch (random.nextInt(3)) {
            case 0 -> new ScrewGeometry.DegreesPerTurn(sigma(90));
            case 1 -> new ScrewGeometry.PushScrew(number(0.1, 20), number(1, 2000));
            default ->
                new ScrewGeometry.Turnbuckle(
                        number(200, 400), number(200, 400), number(210, 390), signed(1.5), number(0.1, 20));
        };
        return new Screw(
                geometry, sense, number(0.001, 2), number(0.001, 5), number(0, 20), oneOf(FinishSense.values()));
    }

    private DiscAllowance allowance() {
        return new DiscAllowance(Angle.ofArcminutes(number(0.06, 590)));
    }

    private SkyBody body() {
        // The Sun is refused by the altitude; a star or anything else of the solar system will do everywhere.
        SolarSystemBody wanderer = oneOf(SolarSystemBody.values());
        return random.nextInt(3) == 0 && wanderer != SolarSystemBody.SUN ? wanderer : star();
    }

    private FixedStar star() {
        return new FixedStar(
                text(),
                new CatalogueStar(
                        signed(2 * Math.PI),
                        signed(Math.PI / 2),
                        number(-5000, 5000),
                        number(-5000, 5000),
                        number(0, 800),
                        number(-300, 300)));
    }

    private DriftDirection direction() {
        return switch (random.nextInt(3)) {
            case 0 -> new DriftDirection.OnSky(random.nextBoolean());
            case 1 -> new DriftDirection.TowardEdge(clock(), view());
            default ->
                new DriftDirection.TowardEdgeGivenWest(
                        new ClockDirection(number(2, 4)), new ClockDirection(number(11, 12)), random.nextBoolean());
        };
    }

    private ReadLength length() {
        double count = number(0, 1);
        return switch (random.nextInt(4)) {
            case 0 -> ReadLength.ofArcseconds(count * 300);
            case 1 -> ReadLength.ofDivisions(count * 20, sigma(0.1));
            case 2 -> ReadLength.ofField(count, sigma(40));
            default -> ReadLength.ofPixels(count * 900, sigma(0.01));
        };
    }

    private View view() {
        return new View(oneOf(Orientation.values()), signed(2 * Math.PI));
    }

    private ClockDirection clock() {
        return new ClockDirection(number(0, 12));
    }

    private Instant instant() {
        Instant whole = FIRST.plusSeconds((long) (random.nextDouble() * SPAN_SECONDS));
        return random.nextBoolean() ? whole : whole.plusNanos(random.nextInt(1_000_000_000));
    }

    private Angle signed(double limitRad) {
        return switch (random.nextInt(8)) {
            case 0 -> Angle.ZERO;
            case 1 -> Angle.ZERO.negated();
            case 2 -> new Angle(random.nextDouble() * 1e-300);
            case 3 -> Angle.ofDegrees(Math.rint(Math.toDegrees(limitRad) * (random.nextDouble() - 0.5) * 100) / 100);
            default -> new Angle(limitRad * (2 * random.nextDouble() - 1));
        };
    }

    /** No tube is ever set to the Sun. */
    private SkyBody bodyButTheSun() {
        SkyBody body = body();
        return body == SolarSystemBody.SUN ? SolarSystemBody.MOON : body;
    }

    /** Above the least uncertainty that is believed, up to so many degrees. */
    private Angle sigma(double limitDeg) {
        double any = limitDeg * (1 - random.nextDouble()) * (random.nextBoolean() ? 1 : 1e-3);
        return Angle.ofDegrees(Math.max(any, 0.06 / 3600));
    }

    private double number(double low, double high) {
        double any = low + (high - low) * random.nextDouble();
        double rounded = Math.rint(any * 10) / 10;
        return random.nextBoolean() && rounded >= low && rounded <= high ? rounded : any;
    }

    private String text() {
        return oneOf(TEXTS);
    }

    private <T> T oneOf(T[] values) {
        return values[random.nextInt(values.length)];
    }
}
