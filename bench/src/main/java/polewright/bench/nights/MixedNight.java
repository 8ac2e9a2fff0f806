package polewright.bench.nights;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.camera.Drive;
import polewright.alignment.sighting.BodyAltitude;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.TurnedFrames;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.mount.AxisOffset;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.MountDisplay;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.JsonLines;
import polewright.simulation.HiddenWedge;
import polewright.simulation.SimulatedFork;
import polewright.simulation.SimulatedObserver;
import polewright.simulation.TubeOnFork;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.Horizon;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * A night of any number of events of every kind, as in a long and busy night: at one wedge whose screws are turned
 * and whose clamps are tightened, observed with the stated errors, and with one sighting in two hundred read the
 * wrong way round.
 */
public final class MixedNight {
    private static final Site SITE = Site.ofDegrees(54.60, -2.90, 240);
    private static final Weather WEATHER = Weather.standardAt(240);
    private static final Instant EVENING = Instant.parse("2026-11-25T17:30:00Z");
    private static final Duration LENGTH = Duration.ofHours(13);
    private static final Angle LOWEST = Angle.ofDegrees(25);
    private static final Angle HIGHEST = Angle.ofDegrees(70);
    private static final double MISTAKEN = 1 / 200.0;
    // The usual fork's push screws.
    private static final double AZIMUTH_DEG_PER_TURN = 0.358;
    private static final double ALTITUDE_DEG_PER_TURN = 0.398;
    private static final Camera CAMERA = new Camera("guide camera", 240, 3.75, 1280, 960);

    private final RandomGenerator random;
    private final SimulatedObserver observer;
    private final List<NamedStar> stars;
    private final Rig rig = Rig.typicalForkOnWedge().withCameras(List.of(CAMERA));
    private final List<LoggedEvent> events = new ArrayList<>();
    private HiddenWedge wedge;
    private boolean isClamped;
    private Instant now = EVENING;

    private MixedNight(long seed) {
        random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        observer = new SimulatedObserver(WEATHER, random);
        stars = NamedStars.bundled().all();
        wedge = HiddenWedge.of(SITE, rig, AxisOffset.ofArcminutes(40, -25), random);
    }

    /** This many events, including the beginning. */
    public static List<LoggedEvent> of(int count, long seed) {
        return new MixedNight(seed).night(count);
    }

    /** A file to write, the number of events, and a seed. */
    public static void main(String[] args) throws IOException {
        StringBuilder text = new StringBuilder();
        JsonLines.write(of(Integer.parseInt(args[1]), Long.parseLong(args[2])), text);
        Files.writeString(Path.of(args[0]), text, StandardCharsets.UTF_8);
    }

    private List<LoggedEvent> night(int count) {
        add(new NightEvent.Begun("Larkfell", SITE, WEATHER, rig, DiscAllowance.VISUAL));
        Duration step = LENGTH.dividedBy(count);
        while (events.size() < count) {
            now = now.plus(step);
            next();
        }
        return events;
    }

    private void add(NightEvent event) {
        events.add(new LoggedEvent(events.size() + 1, now, event));
    }

    private void see(Sighting sighting) {
        add(new NightEvent.SightingTaken(sighting));
    }

    /** Every kind, each as often as in a busy night. */
    private void next() {
        int draw = random.nextInt(100);
        if (draw < 18) {
            drift();
        } else if (draw < 26) {
            still();
        } else if (draw < 30) {
            see(observer.compass(wedge, now, Angle.ofDegrees(3)));
        } else if (draw < 34) {
            see(observer.scale(wedge, now, Angle.ofDegrees(0.5)));
        } else if (draw < 36) {
            see(observer.bearing(wedge, now, body(star()), BodyBearing.Line.TOWARD_BODY, Angle.ofDegrees(1)));
        } else if (draw < 38) {
            altitude();
        } else if (draw < 42) {
            frames();
        } else if (draw < 44) {
            fieldDrift();
        } else if (draw < 52) {
            centred();
        } else if (draw < 60) {
            turn();
        } else if (draw < 66) {
            wedge = wedge.clamped(random);
            isClamped = true;
            add(new NightEvent.Clamped());
        } else if (draw < 69) {
            loosened();
            add(new NightEvent.Unclamped());
        } else if (draw < 70) {
            wedge = wedge.moved(Angle.ofDegrees(random.nextGaussian()), Angle.ofDegrees(random.nextGaussian()), random);
            add(new NightEvent.Knocked());
        } else if (draw < 72) {
            add(new NightEvent.AllowanceSet(new DiscAllowance(Angle.ofArcminutes(3 + random.nextInt(10)))));
        } else if (draw < 73) {
            add(new NightEvent.WorkSet(new Work(List.of(new VisualObservation(
                    "eyepiece",
                    Angle.ofDegrees(0.8),
                    Duration.ofMinutes(5 + random.nextInt(3) * 5L),
                    new VisualObservation.Finding.Centred(),
                    new SkyRegion.Above(Angle.ofDegrees(30)))))));
        } else if (draw < 75) {
            add(new NightEvent.HorizonSet(Horizon.OPEN));
        } else if (draw < 79) {
            add(new NightEvent.TargetWanted(random.nextBoolean() ? body(star()) : SolarSystemBody.SATURN));
        } else if (draw < 82) {
            takeBack();
        } else {
            add(new NightEvent.Noted("dew on the corrector, wiped at " + now));
        }
    }

    private NamedStar star() {
        while (true) {
            NamedStar star = stars.get(random.nextInt(stars.size()));
            Angle altitude = altitudeOf(star);
            if (altitude.compareTo(LOWEST) > 0 && altitude.compareTo(HIGHEST) < 0) {
                return star;
            }
        }
    }

    private static FixedStar body(NamedStar star) {
        return new FixedStar(star.label(), star.place());
    }

    private NamedStar polaris() {
        return stars.stream()
                .filter(star -> star.label().equals("Polaris"))
                .findFirst()
                .orElseThrow();
    }

    private Angle altitudeOf(NamedStar star) {
        ObservingMoment moment = ObservingMoment.of(SITE, SkyTime.of(now), WEATHER);
        return moment.refracted(Ephemeris.apparent(body(star), moment)).altitude();
    }

    private void drift() {
        StarDrift drift = observer.drift(wedge, now, body(star()), Duration.ofMinutes(6), Angle.ofArcseconds(3));
        boolean isMistaken = random.nextDouble() < MISTAKEN && drift.direction() instanceof DriftDirection.OnSky;
        see(isMistaken ? reversed(drift) : drift);
    }

    private static StarDrift reversed(StarDrift drift) {
        return new StarDrift(
                drift.at(),
                drift.length(),
                drift.star(),
                drift.drift(),
                drift.direction().reversed(),
                drift.sigma());
    }

    private void still() {
        see(observer.stillPoint(wedge, now, body(polaris()), rig.widestOptic().orElseThrow()));
    }

    private void altitude() {
        NamedStar star = star();
        see(new BodyAltitude(
                now,
                body(star),
                wedge.pointing()
                        .altitude()
                        .minus(altitudeOf(star))
                        .plus(BodyAltitude.USUAL_SIGMA.times(random.nextGaussian())),
                BodyAltitude.USUAL_SIGMA));
    }

    private void frames() {
        SimulatedFork fork =
                SimulatedFork.on(wedge, TubeOnFork.SQUARE, now).pointed(Angle.ofDegrees(-40), Angle.ofDegrees(80), now);
        see(TurnedFrames.of(
                List.of(
                        observer.attitude(fork, now, CAMERA),
                        observer.attitude(fork.turned(Angle.ofDegrees(45)), now.plusSeconds(30), CAMERA)),
                Drive.NOT_TOLD));
    }

    private void fieldDrift() {
        NamedStar middle = star();
        StarDrift drift = observer.drift(wedge, now, body(middle), Duration.ofMinutes(10), Angle.ofArcseconds(1));
        double sign = ((DriftDirection.OnSky) drift.direction()).north() ? 1 : -1;
        see(new FieldDrift(
                now,
                drift.length(),
                middle.place().rightAscension(),
                middle.place().declination(),
                drift.drift().angle().times(sign),
                Angle.ofArcseconds(5 * random.nextGaussian()),
                Angle.ofArcseconds(1),
                Angle.ofArcseconds(30)));
    }

    /** A centred star, and the mount's circles. */
    private void centred() {
        NamedStar star = star();
        ObservingMoment moment = ObservingMoment.of(SITE, SkyTime.of(now), WEATHER);
        Vector3D seen = moment.refracted(Ephemeris.apparent(body(star), moment)).enu();
        Vector3D axis = wedge.axis();
        Vector3D meridian =
                Vector3D.PLUS_K.subtract(axis.scalarMultiply(axis.getZ())).normalize();
        double hourAngle = Math.atan2(-seen.dotProduct(axis.crossProduct(meridian)), seen.dotProduct(meridian));
        double declination = Math.PI / 2 - Vector3D.angle(axis, seen);
        double sigma = CentredStar.USUAL_SIGMA.radians();
        add(new NightEvent.StarCentred(new CentredStar(
                now,
                body(star),
                new MountDisplay.HourAngle(
                        new Angle(hourAngle + sigma * random.nextGaussian()),
                        new Angle(Math.min(Math.PI / 2, declination + sigma * random.nextGaussian()))),
                false,
                CentredStar.USUAL_SIGMA)));
    }

    private void turn() {
        loosened();
        AxisOffset offset = wedge.offset();
        double azimuth = eighths(-offset.east().degrees() / SITE.latitude().cos() / AZIMUTH_DEG_PER_TURN);
        double altitude = eighths(-offset.up().degrees() / ALTITUDE_DEG_PER_TURN);
        wedge = wedge.turned(azimuth, altitude, random);
        add(new NightEvent.ScrewsTurned(azimuth, altitude));
    }

    /** About this many turns, and never none at all. */
    private double eighths(double turns) {
        double nearly = Math.rint(8 * (turns + random.nextGaussian() / 2)) / 8;
        return nearly == 0 ? 0.125 : nearly;
    }

    private void loosened() {
        if (isClamped) {
            wedge = wedge.clamped(random);
            isClamped = false;
        }
    }

    /** A note that was written by mistake, or an entry corrected. */
    private void takeBack() {
        LoggedEvent last = events.get(events.size() - 1);
        if (last.event() instanceof NightEvent.Noted || last.event() instanceof NightEvent.TargetWanted) {
            add(new NightEvent.Withdrawn(last.seq()));
        } else if (last.event() instanceof NightEvent.ScrewsTurned turned) {
            add(new Correction.TurnCorrected(last.seq(), turned));
        } else {
            add(new NightEvent.Noted("nothing to take back"));
        }
    }
}
