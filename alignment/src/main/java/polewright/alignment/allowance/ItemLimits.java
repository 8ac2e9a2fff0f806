package polewright.alignment.allowance;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.Camera;
import polewright.mount.rig.RightAscensionDrive;
import polewright.sky.angle.Angle;

/** The requirements of one item of work on the axis, as upper limits on image motions. */
final class ItemLimits {
    /**
     * How far the field centre may drift in a series that is not recentred, as a fraction of the frame's shorter side.
     */
    private static final double DRIFT_OF_FRAME = 0.25;

    // Position angles at which a corner is tried: the camera's rotation is unknown.
    private static final int POSITION_ANGLES_ON_TRACK = 16;
    // Fewer are enough over a whole region of sky.
    private static final int POSITION_ANGLES_OVER_SKY = 8;
    // Below this radius a picture trails in its corner as in its middle, to two in a thousand.
    private static final double SMALL_PICTURE_RAD = Math.toRadians(0.1);
    // A corner of a wide picture below this altitude shows ground or haze.
    private static final double LOWEST_CORNER = Math.sin(Math.toRadians(5));
    // The path of a shorter exposure is straight, so its end points suffice. A longer one is sampled in between.
    private static final double STRAIGHT_SECONDS = 300;
    private static final double LONG_EXPOSURE_SECONDS = 1200;
    private static final double LOOK_EVERY_SECONDS = 1800;

    private final ApparentSky sky;
    private final RightAscensionDrive drive;
    private final List<MotionLimit> limits = new ArrayList<>();

    private ItemLimits(ApparentSky sky, RightAscensionDrive drive) {
        this.sky = sky;
        this.drive = drive;
    }

    static List<MotionLimit> of(ApparentSky sky, RightAscensionDrive drive, WorkItem item) {
        return item.accept(new WorkItem.Visitor<>() {
            @Override
            public List<MotionLimit> visualObservation(VisualObservation look) {
                ItemLimits all = new ItemLimits(sky, drive);
                all.addLook(look);
                return all.limits;
            }

            @Override
            public List<MotionLimit> imagingRun(ImagingRun shot) {
                List<MotionLimit> all = new ArrayList<>(trails(sky, drive, shot));
                all.addAll(fieldDrift(sky, drive, shot));
                return all;
            }
        });
    }

    /** For an imaging run: only that the field centre stays in the frame; guiding takes care of that. */
    static List<MotionLimit> fieldDrift(ApparentSky sky, RightAscensionDrive drive, ImagingRun shot) {
        ItemLimits all = new ItemLimits(sky, drive);
        if (shot.guiding() instanceof Guiding.Unguided) {
            all.addFieldDrift(shot);
        }
        return all.limits;
    }

    /** For an imaging run: only the limits on its single exposures. */
    static List<MotionLimit> trails(ApparentSky sky, RightAscensionDrive drive, ImagingRun shot) {
        ItemLimits all = new ItemLimits(sky, drive);
        double halfDiagonal = halfDiagonal(shot.camera());
        for (Stretch stretch : new SkyRegionSampling(sky, shot.region())
                .beginning(shot.subExposure().toMillis() / 1000.0)) {
            if (shot.guiding() instanceof Guiding.Guided guided) {
                all.addGuided(shot, stretch, guided.starDistance().radians(), halfDiagonal);
            } else {
                all.addUnguided(shot, stretch, halfDiagonal);
            }
        }
        return all.limits;
    }

    private void addLook(VisualObservation look) {
        double room = look.driftRoom().arcseconds();
        for (Stretch stretch :
                new SkyRegionSampling(sky, look.region()).beginning(look.stay().toMillis() / 1000.0)) {
            addFromStart(look.name(), LimitCause.LEAVES_FIELD, stretch, room);
        }
        look.goToWithin()
                .ifPresent(within -> limits.add(
                        new MotionLimit(look.name(), LimitCause.GO_TO, new GoToOffset(), 0, within.arcseconds())));
    }

    private void addFieldDrift(ImagingRun shot) {
        double most = shot.camera().field().arcseconds() * DRIFT_OF_FRAME;
        for (Stretch stretch :
                new SkyRegionSampling(sky, shot.region()).within(shot.total().toMillis() / 1000.0)) {
            addFromStart(shot.name(), LimitCause.LEAVES_FRAME, stretch, most);
        }
    }

    private void addFromStart(String item, LimitCause cause, Stretch stretch, double toleranceArcsec) {
        int steps = Math.max(2, (int) Math.ceil(stretch.seconds() / LOOK_EVERY_SECONDS));
        double[] times = times(stretch, steps);
        List<Vector3D> path = path(stretch.start(), times);
        for (int to = 1; to < times.length; to++) {
            addDrift(item, cause, path, times, 0, to, toleranceArcsec);
        }
    }

    private void addUnguided(ImagingRun shot, Stretch stretch, double halfDiagonal) {
        double tolerance = shot.tolerance().arcseconds();
        double[] times = exposureTimes(shot, stretch);
        addAllPairs(shot.name(), LimitCause.DRIFT, path(stretch.start(), times), times, tolerance);
        boolean overSky = !(shot.region() instanceof SkyRegion.Track);
        int ways = overSky && halfDiagonal < SMALL_PICTURE_RAD ? 0 : positionAngles(shot);
        for (int way = 0; way < ways; way++) {
            Vector3D corner = sky.atDistance(stretch.start(), halfDiagonal, 2 * Math.PI * way / ways);
            if (corner.getZ() > LOWEST_CORNER) {
                addAllPairs(shot.name(), LimitCause.CORNER, path(corner, times), times, tolerance);
            }
        }
    }

    /**
     * The guide star lies on one side of the field centre and the corner on the other, the greatest possible
     * separation.
     */
    private void addGuided(ImagingRun shot, Stretch stretch, double guideDistance, double halfDiagonal) {
        double[] times = exposureTimes(shot, stretch);
        List<Vector3D> tube = path(stretch.start(), times);
        int ways = positionAngles(shot);
        for (int way = 0; way < ways; way++) {
            double positionAngle = 2 * Math.PI * way / ways;
            Vector3D corner = sky.atDistance(stretch.start(), halfDiagonal, positionAngle);
            Vector3D guide = sky.atDistance(stretch.start(), guideDistance, positionAngle + Math.PI);
            if (corner.getZ() <= LOWEST_CORNER || guide.getZ() <= LOWEST_CORNER) {
                continue;
            }
            List<Vector3D> corners = path(corner, times);
            List<Vector3D> guides = path(guide, times);
            for (int from = 0; from < times.length; from++) {
                for (int to = from + 1; to < times.length; to++) {
                    limits.add(new MotionLimit(
                            shot.name(),
                            LimitCause.CORNER,
                            new GuidedMotion(
                                    tube.get(from),
                                    guides.get(from),
                                    guides.get(to),
                                    corners.get(from),
                                    corners.get(to)),
                            0,
                            shot.tolerance().arcseconds()));
                }
            }
        }
    }

    private void addAllPairs(
            String item, LimitCause cause, List<Vector3D> path, double[] times, double toleranceArcsec) {
        for (int from = 0; from < times.length; from++) {
            for (int to = from + 1; to < times.length; to++) {
                addDrift(item, cause, path, times, from, to, toleranceArcsec);
            }
        }
    }

    private void addDrift(
            String item,
            LimitCause cause,
            List<Vector3D> path,
            double[] times,
            int from,
            int to,
            double toleranceArcsec) {
        double seconds = times[to] - times[from];
        double turn =
                Angle.ofArcseconds(drive.rate().arcsecPerSecond() * seconds).radians();
        double worm = drive.worm()
                        .maximumWithin(Duration.ofMillis(Math.round(seconds * 1000)))
                        .arcseconds()
                * sky.cosDeclination(path.get(from));
        limits.add(new MotionLimit(
                item, cause, new UnguidedMotion(path.get(from), path.get(to), turn), worm, toleranceArcsec));
    }

    private List<Vector3D> path(Vector3D start, double[] times) {
        return IntStream.range(0, times.length)
                .mapToObj(i -> sky.seen(sky.later(start, times[i])))
                .toList();
    }

    private static double[] exposureTimes(ImagingRun shot, Stretch stretch) {
        double seconds = stretch.seconds();
        int stepsOfLong = shot.region() instanceof SkyRegion.Track ? 6 : 3;
        return times(stretch, seconds > LONG_EXPOSURE_SECONDS ? stepsOfLong : seconds > STRAIGHT_SECONDS ? 2 : 1);
    }

    private static double[] times(Stretch stretch, int steps) {
        return IntStream.rangeClosed(0, steps)
                .mapToDouble(i -> stretch.seconds() * i / steps)
                .toArray();
    }

    private static int positionAngles(ImagingRun shot) {
        return shot.region() instanceof SkyRegion.Track ? POSITION_ANGLES_ON_TRACK : POSITION_ANGLES_OVER_SKY;
    }

    private static double halfDiagonal(Camera camera) {
        return Math.atan(Math.hypot(camera.widthPixels(), camera.heightPixels())
                / 2
                * camera.perPixel().radians());
    }
}
