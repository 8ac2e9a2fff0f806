package polewright.axis.allowance;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.axis.work.SkyRegion;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.time.SiderealRate;

/**
 * Whiles of one length spread over a part of the sky, mostly so close that what happens between two of them is within 2 % of
 * what happens in one; the zone of long guided exposures over a whole sky may come out up to half too wide, as the outermost
 * rows hold only stars that are up too briefly.
 *
 * <p>Each ends when its star sinks below the lowest altitude: that of the region, and 5° for a track. Above an altitude,
 * the 10° about each celestial pole are left out (unless the region holds nothing else): a guided field there turns
 * without bound, and hardly anything is looked at there.
 */
final class Stretches {
    private static final double LOWEST_ON_TRACK_RAD = Math.toRadians(5);
    private static final double TRACK_STEP_RAD = Math.toRadians(3.75);
    private static final double SKY_STEP_RAD = Math.toRadians(15);
    private static final double DECLINATION_STEP_RAD = Math.toRadians(12);
    private static final double HIGHEST_DECLINATION_RAD = Math.toRadians(80);

    private final SeenSky sky;
    private final SkyRegion region;

    Stretches(SeenSky sky, SkyRegion region) {
        this.sky = sky;
        this.region = region;
    }

    /** Those that begin anywhere in the region. */
    List<Stretch> beginning(double seconds) {
        if (region instanceof SkyRegion.Track track) {
            return along(track, track.to().radians(), seconds);
        }
        return over((SkyRegion.Above) region, seconds);
    }

    /** Those that begin and end in the region; if it is too short for that, the one that begins with it. */
    List<Stretch> within(double seconds) {
        if (region instanceof SkyRegion.Track track) {
            double last = track.to().radians() - SiderealRate.RAD_PER_SECOND * seconds;
            return along(track, Math.max(track.from().radians(), last), seconds);
        }
        return over((SkyRegion.Above) region, seconds);
    }

    private List<Stretch> along(SkyRegion.Track track, double lastStart, double seconds) {
        double dec = track.declination().radians();
        double sets = settingHourAngle(dec, LOWEST_ON_TRACK_RAD);
        List<Stretch> stretches = new ArrayList<>();
        for (double hourAngle : spread(track.from().radians(), lastStart, TRACK_STEP_RAD)) {
            double upFor = secondsUp(new Angle(hourAngle).wrappedSigned().radians(), sets);
            if (upFor > 0) {
                stretches.add(new Stretch(sky.airless(hourAngle, dec), Math.min(seconds, upFor)));
            }
        }
        if (stretches.isEmpty()) {
            throw new InputRefused(
                    String.format(
                            Locale.ROOT,
                            "'%s' is not above 5 degrees here when tonight's work begins with it",
                            track.label()),
                    "check the declination, the hour angles (west positive) and the site's latitude");
        }
        return stretches;
    }

    private List<Stretch> over(SkyRegion.Above above, double seconds) {
        double lowest = above.lowestAltitude().radians();
        Site site = sky.site();
        double reach = Math.PI / 2 - lowest;
        double from = site.latitude().radians() - reach;
        double to = site.latitude().radians() + reach;
        if (from < HIGHEST_DECLINATION_RAD && to > -HIGHEST_DECLINATION_RAD) {
            from = Math.max(from, -HIGHEST_DECLINATION_RAD);
            to = Math.min(to, HIGHEST_DECLINATION_RAD);
        }
        List<Stretch> stretches = new ArrayList<>();
        for (double dec : spread(from, to, DECLINATION_STEP_RAD)) {
            double sets = settingHourAngle(dec, lowest);
            double last = sets >= Math.PI ? Math.PI : Math.max(-sets, sets - SiderealRate.RAD_PER_SECOND * seconds);
            for (double hourAngle : spread(-sets, last, SKY_STEP_RAD)) {
                stretches.add(new Stretch(
                        sky.airless(hourAngle, dec), Math.min(seconds, Math.max(1e-3, secondsUp(hourAngle, sets)))));
            }
        }
        return stretches;
    }

    /** Half the arc above an altitude; π when the star never sinks below it, 0 when it never rises above. */
    private double settingHourAngle(double decRad, double altitudeRad) {
        double latitude = sky.site().latitude().radians();
        double cosine = (Math.sin(altitudeRad) - Math.sin(latitude) * Math.sin(decRad))
                / (Math.cos(latitude) * Math.cos(decRad));
        return Math.acos(Math.max(-1, Math.min(1, cosine)));
    }

    private static double secondsUp(double hourAngleRad, double setsRad) {
        if (setsRad >= Math.PI) {
            return Double.POSITIVE_INFINITY;
        }
        return Math.abs(hourAngleRad) > setsRad ? 0 : (setsRad - hourAngleRad) / SiderealRate.RAD_PER_SECOND;
    }

    private static double[] spread(double from, double to, double step) {
        int steps = (int) Math.ceil((to - from) / step - 1e-9);
        double[] values = new double[Math.max(0, steps) + 1];
        for (int i = 0; i < values.length; i++) {
            values[i] = steps <= 0 ? from : from + (to - from) * i / steps;
        }
        return values;
    }
}
