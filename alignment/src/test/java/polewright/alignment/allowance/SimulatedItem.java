package polewright.alignment.allowance;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.WorkItem;
import polewright.mount.AxisOffset;
import polewright.mount.rig.RightAscensionDrive;
import polewright.sky.angle.Angle;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * The fraction of its tolerance that an item uses at an axis offset, by brute force: a catalogue star followed with
 * SOFA at real times, with refraction, and a mount made of rotations. Independent of the code under test.
 */
final class SimulatedItem {
    private static final double SIDEREAL_RAD_PER_SECOND = 2 * Math.PI / 86164.0905;
    private static final int STARTS = 4;
    private static final int TIMES = 5;
    private static final int LONG_TIMES = 9;
    private static final int CORNERS = 16;

    private final Site site;
    private final Weather weather;
    private final RightAscensionDrive drive;
    private final CatalogueStar star;
    private final WorkItem item;
    private final List<Run> runs = new ArrayList<>();

    /** One star followed for a while: its apparent directions, with those of tube and guide star if guided. */
    private record Run(
            List<Double> seconds,
            List<Vector3D> tube,
            List<Vector3D> guide,
            List<Vector3D> star,
            double tolerance,
            boolean all) {}

    SimulatedItem(
            Site site, Weather weather, RightAscensionDrive drive, CatalogueStar star, Instant from, WorkItem item) {
        this.site = site;
        this.weather = weather;
        this.drive = drive;
        this.star = star;
        this.item = item;
        SkyRegion.Track track = (SkyRegion.Track) item.region();
        double range = track.to().minus(track.from()).radians() / SIDEREAL_RAD_PER_SECOND;
        if (item instanceof VisualObservation look) {
            for (double start : starts(range)) {
                addMiddle(
                        from,
                        start,
                        seconds(look.stay()),
                        LONG_TIMES,
                        // When pushed by hand the object begins half-way out from the centre.
                        look.field().radians() / (look.finding() instanceof VisualObservation.Finding.ByHand ? 4 : 2),
                        false);
            }
        } else if (item instanceof ImagingRun shot) {
            addShot(from, range, shot);
        }
    }

    private void addShot(Instant from, double range, ImagingRun shot) {
        double tolerance = shot.tolerance().radians();
        double sub = seconds(shot.subExposure());
        for (double start : starts(range)) {
            List<ObservingMoment> moments = moments(from, start, sub, TIMES);
            if (shot.guiding() instanceof Guiding.Unguided) {
                addMiddle(from, start, sub, TIMES, tolerance, true);
            }
            for (int way = 0; way < CORNERS; way++) {
                double angle = 2 * Math.PI * way / CORNERS;
                double half = Math.atan(
                        Math.hypot(shot.camera().widthPixels(), shot.camera().heightPixels())
                                * shot.camera().pixelMicrons()
                                / 2000
                                / shot.camera().focalLengthMm());
                double guideDistance = shot.guiding() instanceof Guiding.Guided guided
                        ? guided.starDistance().radians()
                        : 0;
                boolean isGuided = shot.guiding() instanceof Guiding.Guided;
                List<Vector3D> corner = seen(beside(moments.get(0), half, angle), moments);
                runs.add(new Run(
                        times(sub, TIMES),
                        isGuided ? seen(star, moments) : List.of(),
                        isGuided ? seen(beside(moments.get(0), -guideDistance, angle), moments) : List.of(),
                        corner,
                        tolerance,
                        true));
            }
        }
        if (shot.guiding() instanceof Guiding.Unguided) {
            double total = seconds(shot.total());
            for (double start : starts(Math.max(0, range - total))) {
                addMiddle(from, start, total, LONG_TIMES, shot.camera().field().radians() / 4, false);
            }
        }
    }

    private void addMiddle(Instant from, double start, double length, int count, double tolerance, boolean all) {
        runs.add(new Run(
                times(length, count),
                List.of(),
                List.of(),
                seen(star, moments(from, start, length, count)),
                tolerance,
                all));
    }

    /**
     * The largest fraction of the tolerance used by any star at any time; within 60′ of the pole, also by its distance
     * from there.
     */
    double share(AxisOffset offset) {
        SimulatedMount mount = SimulatedMount.of(site, offset);
        double most = offset.distance().arcminutes() / 60;
        if (item instanceof VisualObservation look && look.goToWithin().isPresent()) {
            most = Math.max(
                    most, offset.distance().radians() / look.goToWithin().get().radians());
        }
        for (Run run : runs) {
            most = Math.max(most, run.guide.isEmpty() ? drivenShare(mount, run) : heldShare(mount, run));
        }
        return most;
    }

    /** The worst periodic error between any two times. */
    private double drivenShare(SimulatedMount mount, Run run) {
        double rate = Angle.ofArcseconds(drive.rate().arcsecPerSecond()).radians();
        double most = 0;
        for (int i = 0; i < (run.all ? run.seconds.size() : 1); i++) {
            for (int j = i + 1; j < run.seconds.size(); j++) {
                double seconds = run.seconds.get(j) - run.seconds.get(i);
                double half = drive.worm().peakToPeak().radians();
                double worm = half
                        * Math.sin(Math.PI
                                * Math.min(0.5, seconds / seconds(drive.worm().period())));
                for (double lag : worm > 0 ? new double[] {-worm, worm} : new double[] {0}) {
                    Vector3D later = mount.driven(rate * seconds + lag).applyInverseTo(run.star.get(j));
                    most = Math.max(most, Vector3D.distance(run.star.get(i), later));
                }
            }
        }
        return most / run.tolerance;
    }

    private static double heldShare(SimulatedMount mount, Run run) {
        List<Vector3D> inCamera = IntStream.range(0, run.seconds.size())
                .mapToObj(i -> mount.holding(run.tube.get(0), run.guide.get(0), run.guide.get(i))
                        .applyInverseTo(run.star.get(i)))
                .toList();
        double most = 0;
        for (int i = 0; i < inCamera.size(); i++) {
            for (int j = i + 1; j < inCamera.size(); j++) {
                most = Math.max(most, Vector3D.distance(inCamera.get(i), inCamera.get(j)));
            }
        }
        return most / run.tolerance;
    }

    private List<ObservingMoment> moments(Instant from, double start, double length, int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> ObservingMoment.of(
                        site,
                        SkyTime.of(from.plusNanos(Math.round((start + length * i / (count - 1)) * 1e9))),
                        weather))
                .toList();
    }

    private static List<Vector3D> seen(CatalogueStar followed, List<ObservingMoment> moments) {
        return moments.stream()
                .map(m -> m.refracted(m.apparent(followed)).enu())
                .toList();
    }

    /** Catalogue direction at a distance from the star, as it appears at a moment. */
    private CatalogueStar beside(ObservingMoment moment, double distance, double angle) {
        ApparentPlace place = moment.apparent(star);
        double dec = place.declination().radians();
        double sine = Math.sin(dec) * Math.cos(distance) + Math.cos(dec) * Math.sin(distance) * Math.cos(angle);
        double east = Math.atan2(
                Math.sin(angle) * Math.sin(distance) * Math.cos(dec), Math.cos(distance) - Math.sin(dec) * sine);
        return moment.catalogueDirection(
                ApparentPlace.of(place.rightAscension().plus(new Angle(east)), new Angle(Math.asin(sine))));
    }

    private static double[] starts(double range) {
        return IntStream.range(0, range > 0 ? STARTS : 1)
                .mapToDouble(i -> range * i / (STARTS - 1))
                .toArray();
    }

    private static List<Double> times(double length, int count) {
        return IntStream.range(0, count)
                .mapToDouble(i -> length * i / (count - 1))
                .boxed()
                .toList();
    }

    private static double seconds(Duration duration) {
        return duration.toMillis() / 1000.0;
    }
}
