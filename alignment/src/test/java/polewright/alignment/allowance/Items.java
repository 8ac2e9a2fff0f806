package polewright.alignment.allowance;

import java.time.Duration;
import java.util.List;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** Imaging runs for tests. */
final class Items {
    static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);
    static final Weather MEAN = new Weather(1010, 10, 0);
    static final Guiding UNGUIDED = new Guiding.Unguided();

    /** So small that its corner is practically its centre. */
    static final Camera TINY = new Camera("tiny", 2000, 2, 64, 64);

    private Items() {}

    static SkyRegion.Track at(double hourAngleDeg, double declinationDeg) {
        return along(hourAngleDeg, hourAngleDeg, declinationDeg);
    }

    static SkyRegion.Track along(double fromDeg, double toDeg, double declinationDeg) {
        return new SkyRegion.Track(
                "a star", Angle.ofDegrees(declinationDeg), Angle.ofDegrees(fromDeg), Angle.ofDegrees(toDeg));
    }

    static ImagingRun shot(Camera camera, SkyRegion region, double seconds, Guiding guiding, double toleranceArcsec) {
        Duration exposure = Duration.ofMillis(Math.round(seconds * 1000));
        return new ImagingRun("shot", camera, region, exposure, exposure, guiding, Angle.ofArcseconds(toleranceArcsec));
    }

    static ZoneOutcome outcome(Site site, Weather weather, WorkItem... items) {
        return ZoneFinder.find(site, weather, Rig.typicalForkOnWedge(), new Work(List.of(items)));
    }

    static WorkZone zone(Site site, Weather weather, WorkItem... items) {
        return ((ZoneOutcome.Found) outcome(site, weather, items)).zone();
    }
}
