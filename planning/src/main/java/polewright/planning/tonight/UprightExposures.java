package polewright.planning.tonight;

import java.time.Duration;
import java.util.List;
import polewright.alignment.work.ImagingRun;
import polewright.mount.reach.ReachableSky;
import polewright.mount.rig.Camera;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Site;
import polewright.sky.time.SiderealRate;

/**
 * The longest exposures on an upright fork tracking in altitude and azimuth: the field rotates about its centre, and
 * stars in its corners trail.
 *
 * <p>Uses the exact change of the parallactic angle, without refraction, and assumes a perfect drive. The trail allowed
 * is that usually tolerated for an imaging run ({@link ImagingRun#usualTolerance}).
 *
 * @param site the fork's site
 * @param corner angle from the frame centre to its corner
 * @param tolerance longest acceptable trail
 */
public record UprightExposures(Site site, Angle corner, Angle tolerance) {
    /** The limit of the search. */
    public static final Duration LONGEST = Duration.ofHours(1);

    private static final Angle USUAL_SEEING = Angle.ofArcseconds(3);
    private static final Angle LOWEST = Angle.ofDegrees(30);
    private static final int SAMPLES = 720;

    /** For a camera, with the usual tolerance. */
    public static UprightExposures of(Site site, Camera camera) {
        Angle corner = camera.perPixel().times(Math.hypot(camera.widthPixels(), camera.heightPixels()) / 2);
        return new UprightExposures(site, corner, ImagingRun.usualTolerance(camera, USUAL_SEEING));
    }

    /** The longest exposure that starts with the field there; at most {@link #LONGEST}. */
    public Duration longest(HourAnglePlace place) {
        double most = tolerance.radians() / corner.radians();
        double start = parallacticRad(place, 0);
        double step = LONGEST.toSeconds() / (double) SAMPLES;
        double before = 0;
        for (int i = 1; i <= SAMPLES; i++) {
            double turned = turn(place, start, i * step);
            if (turned > most) {
                double share = (most - before) / (turned - before);
                return Duration.ofMillis((long) ((i - 1 + share) * step * 1000));
            }
            before = turned;
        }
        return LONGEST;
    }

    /** The longest at an azimuth and altitude. */
    public Duration longest(double azimuthDeg, double altitudeDeg) {
        return longest(ReachableSky.place(site, azimuthDeg, altitudeDeg));
    }

    /** The fraction of the sky above 30° that allows exposures of that length, 0 to 1. */
    public double shareOfSky(Duration wanted) {
        List<HourAnglePlace> sky = ReachableSky.above(LOWEST, site);
        long enough = sky.stream()
                .filter(place -> longest(place).compareTo(wanted) >= 0)
                .count();
        return enough / (double) sky.size();
    }

    private double turn(HourAnglePlace place, double startRad, double seconds) {
        return Math.abs(new Angle(parallacticRad(place, seconds) - startRad)
                .wrappedSigned()
                .radians());
    }

    /** Formula 14.1 of J. Meeus, Astronomical Algorithms: the angle at the star from the pole to the zenith. */
    private double parallacticRad(HourAnglePlace place, double seconds) {
        double h = place.hourAngle().plus(SiderealRate.during(seconds)).radians();
        double declination = place.declination().radians();
        return Math.atan2(
                site.latitude().cos() * Math.sin(h),
                site.latitude().sin() * Math.cos(declination)
                        - site.latitude().cos() * Math.sin(declination) * Math.cos(h));
    }
}
