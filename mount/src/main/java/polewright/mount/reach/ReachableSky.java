package polewright.mount.reach;

import java.util.ArrayList;
import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;

/** Places distributed evenly over the sky. */
public final class ReachableSky {
    private static final double STEP_DEG = 12;

    private ReachableSky() {}

    /** About one per 12° square above an altitude, limited to those within reach. */
    public static List<HourAnglePlace> above(Angle lowest, Site site, PointingLimits reach) {
        return above(lowest, site).stream().filter(reach::canReach).toList();
    }

    /** About one per 12° square above an altitude. */
    public static List<HourAnglePlace> above(Angle lowest, Site site) {
        List<HourAnglePlace> places = new ArrayList<>();
        for (double altitude = lowest.degrees(); altitude <= 88; altitude += STEP_DEG) {
            int around = Math.max(1, (int) Math.round(360 * Math.cos(Math.toRadians(altitude)) / STEP_DEG));
            for (int i = 0; i < around; i++) {
                places.add(place(site, 360.0 * i / around, altitude));
            }
        }
        return places;
    }

    /** The place at an azimuth and true altitude. */
    public static HourAnglePlace place(Site site, double azimuthDeg, double altitudeDeg) {
        var v = AirlessDirection.of(Angle.ofDegrees(azimuthDeg), Angle.ofDegrees(altitudeDeg))
                .enu();
        double x = -site.latitude().sin() * v.getY() + site.latitude().cos() * v.getZ();
        double z = site.latitude().cos() * v.getY() + site.latitude().sin() * v.getZ();
        return new HourAnglePlace(
                new Angle(Math.atan2(-v.getX(), x)), new Angle(Math.atan2(z, Math.hypot(x, v.getX()))));
    }
}
