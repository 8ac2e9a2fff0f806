package polewright.alignment.allowance;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.alignment.work.SkyRegion;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.time.SiderealRate;

/**
 * Time intervals of one length that sample a region of sky so closely that the motion between two of them is within 2 %
 * of the motion in one.
 *
 * <p>On a track each ends when its star sinks below 5°. For a region above an altitude, the 10° around each celestial
 * pole are left out unless they are requested or the region holds nothing else: a guided field there rotates without
 * bound, and hardly anything is observed there.
 */
final class SkyRegionSampling {
    private static final double LOWEST_ON_TRACK_RAD = Math.toRadians(5);
    private static final double TRACK_STEP_RAD = Math.toRadians(3.75);
    private static final double SKY_STEP_RAD = Math.toRadians(3.75);
    // Between the rims little changes from one hour angle to the next.
    private static final int INNER_EVERY = 4;
    private static final double DECLINATION_STEP_RAD = Math.toRadians(10);
    private static final double HIGHEST_DECLINATION_RAD = Math.PI / 2 - SkyRegion.Above.ABOUT_THE_POLE.radians();

    private final ApparentSky sky;
    private final SkyRegion region;

    SkyRegionSampling(ApparentSky sky, SkyRegion region) {
        this.sky = sky;
        this.region = region;
    }

    /** Intervals that begin anywhere in the region. */
    List<Stretch> beginning(double seconds) {
        if (region instanceof SkyRegion.Track track) {
            return along(track, track.to().radians(), seconds);
        }
        return over((SkyRegion.Above) region, seconds);
    }

    /** Intervals that begin and end in the region; if it is too short for that, the one that begins with it. */
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
                            "'%s' is not above 5 degrees at this site when its observation begins",
                            track.label()),
                    "check the declination, the hour angles (west positive) and the site's latitude");
        }
        return stretches;
    }

    /**
     * Every 3.75° of hour angle, from the southernmost star that stays up throughout to the northernmost: the strictest
     * limits are at the rim. If none stays up that long, intervals that end when their star sinks.
     */
    private List<Stretch> over(SkyRegion.Above above, double seconds) {
        double lowest = above.lowestAltitude().radians();
        double highest = above.toThePole() ? Math.PI / 2 : HIGHEST_DECLINATION_RAD;
        List<Stretch> lookedAt = over(lowest, seconds, highest);
        if (!lookedAt.isEmpty()) {
            return lookedAt;
        }
        List<Stretch> aboutThePole = over(lowest, seconds, Math.PI / 2);
        return aboutThePole.isEmpty() ? cutShort(lowest, seconds) : aboutThePole;
    }

    private List<Stretch> over(double lowestRad, double seconds, double highestDecRad) {
        List<Stretch> stretches = new ArrayList<>();
        double turn = SiderealRate.RAD_PER_SECOND * seconds;
        int column = 0;
        for (double hourAngle : spread(-Math.PI, Math.PI - SKY_STEP_RAD, SKY_STEP_RAD)) {
            boolean rimsOnly = column++ % INNER_EVERY != 0;
            double from = -highestDecRad;
            double to = highestDecRad;
            for (int quarter = 0; quarter <= 4; quarter++) {
                double later = hourAngle + turn * quarter / 4;
                from = Math.max(from, middleDec(later) - reachRad(later, lowestRad));
                to = Math.min(to, middleDec(later) + reachRad(later, lowestRad));
            }
            if (from <= to) {
                double step = rimsOnly ? Math.max(to - from, DECLINATION_STEP_RAD) : DECLINATION_STEP_RAD;
                for (double dec : spread(from, to, step)) {
                    stretches.add(new Stretch(sky.airless(hourAngle, dec), seconds));
                }
            }
        }
        return stretches;
    }

    private List<Stretch> cutShort(double lowestRad, double seconds) {
        double latitude = sky.site().latitude().radians();
        double reach = Math.PI / 2 - lowestRad;
        List<Stretch> stretches = new ArrayList<>();
        for (double dec : spread(latitude - reach, latitude + reach, DECLINATION_STEP_RAD)) {
            double sets = settingHourAngle(dec, lowestRad);
            double upFor = secondsUp(-sets, sets);
            stretches.add(new Stretch(sky.airless(-sets, dec), Math.min(seconds, Math.max(1e-3, upFor))));
        }
        return stretches;
    }

    // Declination of greatest altitude at an hour angle, δ0 in sin a = R cos(δ − δ0).
    private double middleDec(double hourAngleRad) {
        double latitude = sky.site().latitude().radians();
        return Math.atan2(Math.sin(latitude), Math.cos(latitude) * Math.cos(hourAngleRad));
    }

    /**
     * The half-range in declination around that within which the altitude is exceeded at an hour angle; −π if it never
     * is.
     */
    private double reachRad(double hourAngleRad, double lowestRad) {
        double latitude = sky.site().latitude().radians();
        double highest = Math.hypot(Math.sin(latitude), Math.cos(latitude) * Math.cos(hourAngleRad));
        double share = Math.sin(lowestRad) / highest;
        return share > 1 ? -Math.PI : Math.acos(share);
    }

    /** Hour angle at which a star sinks below an altitude; π if it never sinks below it, 0 if it never rises above. */
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
