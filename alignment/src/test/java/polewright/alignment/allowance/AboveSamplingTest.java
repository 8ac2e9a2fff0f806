package polewright.alignment.allowance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SiderealRate;

/**
 * Compares the sparse sampling of a whole sky with a dense one. Here every 3.75° of hour angle and 3° of declination is
 * a track of its own, out to where a star just stays up, with 16 position angles, in all corners and at all times of a
 * track.
 */
@Tag("slow")
class AboveSamplingTest {
    private static final int WORKS = 20;
    private static final int WAYS = 8;
    private static final double WITHIN = 0.02;
    private static final double HOUR_ANGLE_STEP_DEG = 3.75;
    private static final double DECLINATION_STEP_DEG = 3;
    private static final double FINE_DEG = 0.1;
    // The sky nearer to a celestial pole is left out of regions, as documented there.
    private static final double HIGHEST_DECLINATION_DEG = 80;
    private static final Rig RIG = Rig.typicalForkOnWedge();

    private record Case(Site site, Weather weather, WorkItem item) {
        static Case draw(Random random, boolean northern) {
            Site site = Site.ofDegrees(
                    (northern ? 1 : -1) * (10 + 55 * random.nextDouble()), 0, 1000 * random.nextDouble());
            SkyRegion region = new SkyRegion.Above(Angle.ofDegrees(20 + 25 * random.nextDouble()));
            return new Case(site, Weather.standardAt(site.heightMetres()), item(random, region));
        }

        private static WorkItem item(Random random, SkyRegion region) {
            if (random.nextInt(5) == 0) {
                return new VisualObservation(
                        "item",
                        Angle.ofDegrees(0.1 * Math.pow(10, random.nextDouble())),
                        Duration.ofSeconds(300 + random.nextInt(2400)),
                        new VisualObservation.Finding.Centred(),
                        region);
            }
            double sub = 10 * Math.pow(180, random.nextDouble());
            int width = 1000 + random.nextInt(5000);
            Camera camera = new Camera(
                    "camera",
                    50 * Math.pow(40, random.nextDouble()),
                    2.4 + 5 * random.nextDouble(),
                    width,
                    width * 2 / 3);
            return new ImagingRun(
                    "item",
                    camera,
                    region,
                    duration(sub),
                    duration(sub * (1 + 3 * random.nextDouble())),
                    random.nextBoolean()
                            ? new Guiding.Unguided()
                            : new Guiding.Guided(Angle.ofDegrees(1.5 * random.nextDouble())),
                    ImagingRun.usualTolerance(camera, Angle.ofArcseconds(3)));
        }

        /** Exposures and stays that begin and end above the lowest altitude. */
        List<MotionLimit> dense() {
            ApparentSky sky = new ApparentSky(site, weather);
            List<MotionLimit> limits = new ArrayList<>();
            if (item instanceof VisualObservation look) {
                for (SkyRegion.Track here : places(look.stay())) {
                    limits.addAll(ItemLimits.of(
                            sky,
                            RIG.drive(),
                            new VisualObservation(
                                    look.name(),
                                    look.field(),
                                    look.stay(),
                                    new VisualObservation.Finding.Centred(),
                                    here)));
                }
            } else if (item instanceof ImagingRun shot) {
                for (SkyRegion.Track here : places(shot.subExposure())) {
                    limits.addAll(ItemLimits.trails(sky, RIG.drive(), at(shot, here)));
                }
                for (SkyRegion.Track here : places(shot.total())) {
                    limits.addAll(ItemLimits.fieldDrift(sky, RIG.drive(), at(shot, here)));
                }
            }
            return limits;
        }

        private List<SkyRegion.Track> places(Duration length) {
            List<SkyRegion.Track> places = new ArrayList<>();
            for (double hourAngle = -180; hourAngle < 180; hourAngle += HOUR_ANGLE_STEP_DEG) {
                double lowest = Double.NaN;
                double highest = Double.NaN;
                for (double dec = -HIGHEST_DECLINATION_DEG; dec <= HIGHEST_DECLINATION_DEG; dec += FINE_DEG) {
                    if (staysUp(hourAngle, dec, length)) {
                        lowest = Double.isNaN(lowest) ? dec : lowest;
                        highest = dec;
                    }
                }
                if (!Double.isNaN(lowest)) {
                    int steps = (int) Math.ceil((highest - lowest) / DECLINATION_STEP_DEG);
                    for (int i = 0; i <= steps; i++) {
                        double dec = steps == 0 ? lowest : lowest + (highest - lowest) * i / steps;
                        Angle at = Angle.ofDegrees(hourAngle);
                        places.add(new SkyRegion.Track("here", Angle.ofDegrees(dec), at, at));
                    }
                }
            }
            return places;
        }

        private boolean staysUp(double hourAngleDeg, double decDeg, Duration length) {
            double lowest = ((SkyRegion.Above) item.region()).lowestAltitude().sin();
            Angle dec = Angle.ofDegrees(decDeg);
            for (int tenth = 0; tenth <= 10; tenth++) {
                double later =
                        Math.toRadians(hourAngleDeg) + SiderealRate.RAD_PER_SECOND * seconds(length) * tenth / 10;
                double sine =
                        site.latitude().sin() * dec.sin() + site.latitude().cos() * dec.cos() * Math.cos(later);
                if (sine < lowest) {
                    return false;
                }
            }
            return true;
        }

        private static ImagingRun at(ImagingRun shot, SkyRegion.Track here) {
            return new ImagingRun(
                    shot.name(),
                    shot.camera(),
                    here,
                    shot.subExposure(),
                    shot.total(),
                    shot.guiding(),
                    shot.tolerance());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {31_415, 27_182})
    void zoneOverAWholeSky_agreesWithAMuchDenserGrid_within2Percent_for20RandomWorksInBothHemispheres(long seed) {
        Random random = new Random(seed);
        List<String> off = new ArrayList<>();
        int found = 0;
        while (found < WORKS) {
            Case drawn = Case.draw(random, found % 2 == 0);
            if (!(ZoneFinder.find(drawn.site, drawn.weather, RIG, new Work(List.of(drawn.item)))
                            instanceof ZoneOutcome.Found zone)
                    || zone.zone().edges().stream().anyMatch(edge -> edge.cause() == LimitCause.MOUNT)) {
                continue;
            }
            found++;
            List<MotionLimit> dense = drawn.dense();
            for (int way = 0; way < WAYS; way++) {
                double angle = 2 * Math.PI * (way + random.nextDouble()) / WAYS;
                double edge = ZoneRay.reach(zone.zone(), angle);
                double ratio = edge / denseEdge(dense, drawn.site, zone.zone().bestAim(), angle, edge);
                if (!(Math.abs(ratio - 1) <= WITHIN)) {
                    off.add(String.format(
                            Locale.ROOT, "work %d: %.3f′, %.4f of what it should be: %s", found, edge, ratio, drawn));
                }
            }
        }
        assertThat(off).isEmpty();
    }

    /** Where the fraction reaches 1, interpolated from inside and outside of the edge; NaN if it does not. */
    private static double denseEdge(List<MotionLimit> limits, Site site, AxisOffset aim, double angle, double edge) {
        CandidateAxis inside = axis(site, aim, angle, 0.97 * edge);
        double low = 0;
        MotionLimit worst = limits.get(0);
        for (MotionLimit limit : limits) {
            double share = limit.share(inside);
            if (share > low) {
                low = share;
                worst = limit;
            }
        }
        double high = worst.share(axis(site, aim, angle, 1.03 * edge));
        return low < 1 && high > 1 ? edge * (0.97 + 0.06 * (1 - low) / (high - low)) : Double.NaN;
    }

    private static CandidateAxis axis(Site site, AxisOffset aim, double angle, double reach) {
        return CandidateAxis.of(
                site,
                AxisOffset.ofArcminutes(
                        aim.east().arcminutes() + reach * Math.cos(angle),
                        aim.up().arcminutes() + reach * Math.sin(angle)));
    }

    private static double seconds(Duration duration) {
        return duration.toMillis() / 1000.0;
    }

    private static Duration duration(double seconds) {
        return Duration.ofMillis(Math.max(1, (long) (1000 * seconds)));
    }
}
