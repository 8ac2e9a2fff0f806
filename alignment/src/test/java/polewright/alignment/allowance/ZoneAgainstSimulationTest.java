package polewright.alignment.allowance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.mount.rig.RightAscensionDrive;
import polewright.mount.rig.TrackingRate;
import polewright.mount.rig.Worm;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * The zone's edge compared with motions simulated without any of its formulas: {@link SimulatedItem}. For single stars
 * at declinations within 60° and above 32° of altitude; regions are tested by {@link AboveSamplingTest}.
 */
@Tag("slow")
class ZoneAgainstSimulationTest {
    private static final int ITEMS = 200;
    private static final int WAYS = 6;
    // Nearer a celestial pole a long narrow guided zone is too curved to be drawn convex.
    private static final double HIGHEST_DECLINATION_DEG = 60;
    // So that no exposure ends early because its star, or a corner of its field, sinks too low.
    private static final double LOWEST_ALTITUDE_DEG = 32;
    // Practically all of it, where the edge depends on hundredths of arcseconds.
    private static final double WORM_OF_TOLERANCE = 0.99;

    /** A random item of work at some place and time with some mount. */
    private record Case(Site site, Weather weather, Rig rig, NamedStar star, Instant from, WorkItem item) {
        static Case draw(Random random) {
            double latitude = (random.nextBoolean() ? 1 : -1) * (10 + 55 * random.nextDouble());
            Site site = Site.ofDegrees(latitude, -180 + 360 * random.nextDouble(), 2000 * random.nextDouble());
            Weather weather = new Weather(750 + 270 * random.nextDouble(), -15 + 40 * random.nextDouble(), 0.5);
            double sub = 5 * Math.pow(360, random.nextDouble());
            double total = sub * (1 + 5 * random.nextDouble());
            double range = total + 3600 * random.nextDouble();
            double longest = range + 3600;
            List<NamedStar> stars = NamedStars.bundled().all();
            while (true) {
                NamedStar star = stars.get(random.nextInt(stars.size()));
                Instant from = Instant.parse("2026-01-01T00:00:00Z").plusSeconds(random.nextInt(100_000_000));
                if (altitude(site, star, from) > LOWEST_ALTITUDE_DEG
                        && altitude(site, star, from.plusSeconds((long) longest / 2)) > LOWEST_ALTITUDE_DEG
                        && altitude(site, star, from.plusSeconds((long) longest)) > LOWEST_ALTITUDE_DEG
                        && Math.abs(star.place().declination().degrees()) < HIGHEST_DECLINATION_DEG) {
                    WorkItem item = item(random, track(site, star, from, range), sub, total);
                    RightAscensionDrive drive = drive(random, item);
                    Rig usual = Rig.typicalForkOnWedge();
                    Rig rig = new Rig(
                            usual.name(),
                            usual.kind(),
                            usual.azimuthScrew(),
                            usual.altitudeScrew(),
                            usual.levelSigma(),
                            usual.clampSigma(),
                            usual.optics(),
                            usual.cameras(),
                            usual.screwOrder(),
                            drive,
                            usual.travel(),
                            usual.experience());
                    return new Case(site, weather, rig, star, from, item);
                }
            }
        }

        private static RightAscensionDrive drive(Random random, WorkItem item) {
            Angle tolerance = item instanceof ImagingRun shot ? shot.tolerance() : ((VisualObservation) item).field();
            Worm worm = new Worm(
                    Angle.ofArcseconds(Math.min(40, WORM_OF_TOLERANCE * random.nextDouble() * tolerance.arcseconds())),
                    Duration.ofSeconds(240 + random.nextInt(400)));
            return new RightAscensionDrive(
                    random.nextInt(3) == 0 ? TrackingRate.KING : TrackingRate.SIDEREAL,
                    random.nextInt(3) == 0 ? worm : Worm.NOT_COUNTED);
        }

        private static double altitude(Site site, NamedStar star, Instant at) {
            ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(at), Weather.AIRLESS);
            return moment.airless(moment.apparent(star.place())).altitude().degrees();
        }

        private static SkyRegion.Track track(Site site, NamedStar star, Instant from, double seconds) {
            ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(from), Weather.AIRLESS);
            HourAnglePlace place = moment.hourAngle(moment.apparent(star.place()));
            Angle length = new Angle(2 * Math.PI * seconds / 86164.0905);
            return new SkyRegion.Track(
                    star.label(),
                    place.declination(),
                    place.hourAngle(),
                    place.hourAngle().plus(length));
        }

        private static WorkItem item(Random random, SkyRegion.Track track, double sub, double total) {
            if (random.nextInt(4) == 0) {
                VisualObservation.Finding finding = switch (random.nextInt(4)) {
                    case 0 -> new VisualObservation.Finding.GoTo(Angle.ofArcminutes(5 + 40 * random.nextDouble()));
                    case 1 -> new VisualObservation.Finding.ByHand();
                    default -> new VisualObservation.Finding.Centred();
                };
                return new VisualObservation(
                        "item",
                        Angle.ofDegrees(0.1 * Math.pow(20, random.nextDouble())),
                        Duration.ofSeconds(120 + random.nextInt(3000)),
                        finding,
                        track);
            }
            double pixel = 2.4 + 5 * random.nextDouble();
            int width = 2000 + random.nextInt(4000);
            Camera camera = new Camera("camera", 50 * Math.pow(60, random.nextDouble()), pixel, width, width * 2 / 3);
            Guiding guiding = random.nextBoolean()
                    ? new Guiding.Unguided()
                    : new Guiding.Guided(Angle.ofDegrees(1.5 * random.nextDouble()));
            Angle seeing = Angle.ofArcseconds(1.5 + 3 * random.nextDouble());
            return new ImagingRun(
                    "item",
                    camera,
                    track,
                    Duration.ofMillis((long) (1000 * sub)),
                    Duration.ofMillis((long) (1000 * total)),
                    guiding,
                    ImagingRun.usualTolerance(camera, seeing).times(1 + random.nextDouble()));
        }
    }

    @Test
    void edge_matchesSimulatedImageMotion_within2Percent_for200RandomItems() {
        Random random = new Random(20_404);
        List<String> off = new ArrayList<>();
        List<Double> errors = new ArrayList<>();
        int found = 0;
        int impossible = 0;
        while (found < ITEMS) {
            Case drawn = Case.draw(random);
            if (!(ZoneFinder.find(drawn.site, drawn.weather, drawn.rig, new Work(List.of(drawn.item)))
                    instanceof ZoneOutcome.Found zone)) {
                impossible++;
                continue;
            }
            found++;
            SimulatedItem simulated = new SimulatedItem(
                    drawn.site, drawn.weather, drawn.rig.drive(), drawn.star.place(), drawn.from, drawn.item);
            for (int way = 0; way < WAYS; way++) {
                double angle = 2 * Math.PI * (way + random.nextDouble()) / WAYS;
                double edge = ZoneRay.reach(zone.zone(), angle);
                double ratio = edge / simulatedEdge(simulated, zone.zone().bestAim(), angle, edge);
                errors.add(Math.abs(ratio - 1));
                if (!(Math.abs(ratio - 1) <= 0.02)) {
                    off.add(String.format(
                            Locale.ROOT, "item %d: %.3f′, %.4f of what it should be: %s", found, edge, ratio, drawn));
                }
            }
        }
        assertThat(off).isEmpty();
        errors.sort(null);
        // The figures of docs/formulas.md.
        assertThat(errors.get(errors.size() / 2)).isLessThan(0.0002);
        assertThat(errors.get(errors.size() * 95 / 100)).isLessThan(0.002);
        // Few of those drawn are impossible: otherwise the rest would be a selection of easy ones.
        assertThat(impossible).isLessThan(ITEMS / 10);
    }

    /** Where the simulated fraction reaches 1: searched within 3 % of the edge and interpolated; NaN if it does not. */
    private static double simulatedEdge(SimulatedItem item, AxisOffset aim, double angle, double edge) {
        double low = shareAt(item, aim, angle, 0.97 * edge);
        double high = shareAt(item, aim, angle, 1.03 * edge);
        return low < 1 && high > 1 ? edge * (0.97 + 0.06 * (1 - low) / (high - low)) : Double.NaN;
    }

    private static double shareAt(SimulatedItem item, AxisOffset aim, double angle, double reach) {
        return item.share(AxisOffset.ofArcminutes(
                aim.east().arcminutes() + reach * Math.cos(angle), aim.up().arcminutes() + reach * Math.sin(angle)));
    }
}
