package polewright.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.camera.Drive;
import polewright.alignment.fix.AxisState;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Camera;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** A night at a hidden wedge, logged event by event by an observer who does as the test specifies. */
final class PractisedWedge {
    private static final Camera CAMERA = new Camera("guide camera", 240, 3.75, 1280, 960);
    private static final Angle DRIFT_SIGMA = Angle.ofArcseconds(3);
    private static final Duration DRIFT = Duration.ofMinutes(10);

    private final SimulatedObserver observer;
    private final NightEvent.Begun begun;
    private final List<LoggedEvent> events = new ArrayList<>();
    private final NightState.ModelCache models = new NightState.ModelCache();
    private HiddenWedge wedge;
    private Instant now;

    PractisedWedge(HiddenWedge wedge, RandomGenerator random) {
        this(wedge, wedge.rig(), random);
    }

    /** The logged rig may have values that do not affect the wedge. */
    PractisedWedge(HiddenWedge wedge, Rig writtenDown, RandomGenerator random) {
        this(wedge, writtenDown, Instant.parse("2026-03-01T20:00:00Z"), random);
    }

    /** The same on another night. */
    PractisedWedge(HiddenWedge wedge, Rig writtenDown, Instant from, RandomGenerator random) {
        this.now = from;
        Weather weather = Weather.standardAt(wedge.site().heightMetres());
        this.observer = new SimulatedObserver(weather, random);
        this.wedge = wedge;
        this.begun = new NightEvent.Begun("somewhere", wedge.site(), weather, writtenDown, DiscAllowance.VISUAL);
        log(begun);
    }

    static RandomGenerator random(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    /** In the north for even seeds, in the south for odd ones, latitudes 25 to 60. */
    static Site site(long seed, RandomGenerator random) {
        return Site.ofDegrees((seed % 2 == 0 ? 1 : -1) * (25 + 35 * random.nextDouble()), 0, 300);
    }

    /** Off by at least and at most this much in both directions, with random signs. */
    static AxisOffset offset(double leastDeg, double mostDeg, RandomGenerator random) {
        return new AxisOffset(between(leastDeg, mostDeg, random), between(leastDeg, mostDeg, random));
    }

    private static Angle between(double leastDeg, double mostDeg, RandomGenerator random) {
        double degrees = leastDeg + (mostDeg - leastDeg) * random.nextDouble();
        return Angle.ofDegrees(random.nextBoolean() ? degrees : -degrees);
    }

    /** The same wedge with screws that do this multiple of their nominal effect. */
    static HiddenWedge withFactors(HiddenWedge wedge, double azimuth, double altitude) {
        return new HiddenWedge(
                wedge.site(),
                wedge.rig(),
                wedge.axis(),
                wedge.azimuthAxis(),
                azimuth,
                altitude,
                wedge.azimuthBacklash(),
                wedge.altitudeBacklash());
    }

    /** The same wedge with its axis moved by hand to exactly this offset. */
    static HiddenWedge pointing(HiddenWedge wedge, AxisOffset offset) {
        return new HiddenWedge(
                wedge.site(),
                wedge.rig(),
                AxisPointing.of(wedge.site(), offset).elevatedEnd(),
                wedge.azimuthAxis(),
                wedge.azimuthFactor(),
                wedge.altitudeFactor(),
                wedge.azimuthBacklash(),
                wedge.altitudeBacklash());
    }

    /** Two drifts of ten minutes, each measured to 3″: near the meridian and in the east. */
    PractisedWedge seenByEye() {
        sighted(observer.drift(wedge, now, star(-2, 5), DRIFT, DRIFT_SIGMA), DRIFT);
        return sighted(observer.drift(wedge, now, star(-70, 15), DRIFT, DRIFT_SIGMA), DRIFT);
    }

    /** Three frames of a guide camera. */
    PractisedWedge seenByCamera() {
        CameraOnTube onTube = new CameraOnTube(
                (fork, at) -> observer.attitude(fork, at, CAMERA), TubeOnFork.SQUARE, Angle.ofDegrees(30));
        return sighted(TurnedFrames.of(onTube.turned(wedge, now).attitudes(), Drive.STANDING), CameraOnTube.TAKES);
    }

    PractisedWedge turned(HandTurns azimuth, HandTurns altitude) {
        wedge = wedge.turned(azimuth, altitude, observer.random());
        return log(new NightEvent.ScrewsTurned(azimuth.net(), altitude.net(), azimuth.back(), altitude.back()));
    }

    /** Turned to the pole in eighths of a turn, by what is known so far. */
    PractisedWedge turnedToThePole() {
        AxisState.Turns turns = state().turnsTo(AxisOffset.NONE, begun.rig());
        double azimuth = Math.rint(turns.azimuth() * 8) / 8;
        double altitude = Math.rint(turns.altitude() * 8) / 8;
        return azimuth == 0 && altitude == 0 ? this : turned(HandTurns.straight(azimuth), HandTurns.straight(altitude));
    }

    /** Clamped, with a mean shift of the axis and this scatter in each direction. */
    PractisedWedge clamped(AxisOffset usual, Angle sigma) {
        AxisOffset from = wedge.offset();
        wedge = pointing(
                wedge,
                new AxisOffset(
                        from.east()
                                .plus(usual.east())
                                .plus(sigma.times(observer.random().nextGaussian())),
                        from.up()
                                .plus(usual.up())
                                .plus(sigma.times(observer.random().nextGaussian()))));
        return log(new NightEvent.Clamped());
    }

    PractisedWedge log(NightEvent event) {
        events.add(new LoggedEvent(events.size() + 1L, now, event));
        return this;
    }

    HiddenWedge wedge() {
        return wedge;
    }

    List<LoggedEvent> events() {
        return List.copyOf(events);
    }

    NightState night() {
        return NightState.of(events());
    }

    AxisState state() {
        return NightState.of(events, now, models).fix().state();
    }

    private PractisedWedge sighted(Sighting sighting, Duration taken) {
        log(new NightEvent.SightingTaken(sighting));
        now = now.plus(taken).plusSeconds(60);
        return this;
    }

    /** A star at this declination toward the elevated pole. */
    private FixedStar star(double hourAngleDeg, double towardPoleDeg) {
        Site site = wedge.site();
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(now), observer.weather());
        return new FixedStar(
                "a star",
                moment.catalogueDirection(moment.apparent(new HourAnglePlace(
                        Angle.ofDegrees(hourAngleDeg), Angle.ofDegrees(site.hemisphereSign() * towardPoleDeg)))));
    }
}
