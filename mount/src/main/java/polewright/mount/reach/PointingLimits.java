package polewright.mount.reach;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Rig;
import polewright.mount.rig.TravelLimits;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.Refraction;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.Interval;

/**
 * What a rig at a site can point at: above the local horizon and the lowest altitude, within the cables' range, clear
 * of the fork.
 *
 * <p>The local horizon and altitudes are apparent, so refraction (by a standard atmosphere) lifts a star over them. The
 * axis is assumed to be at the pole: an axis some degrees off shifts the fork's limits by as much.
 */
public final class PointingLimits {
    // The sky turns one degree in four minutes: a gap in the local horizon narrower than that is not worth observing
    // through.
    private static final Duration STEP = Duration.ofMinutes(4);
    private static final Duration GOOD_TO = Duration.ofSeconds(5);
    // More than refraction ever lifts.
    private static final double MOST_LIFT_RAD = Math.toRadians(1);

    private final double sinLat;
    private final double cosLat;
    private final int hemisphere;
    private final boolean isUpright;
    private final boolean hasFork;
    private final Horizon horizon;
    private final double highestSkylineRad;
    private final TravelLimits travel;
    /** Sine of an altitude from which no refraction lifts a star to the lowest. */
    private final double sineOfHopeless;

    private final Refraction refraction;
    private final double towardPoleRad;
    private final double beyondEquatorRad;

    private PointingLimits(Site site, Rig rig, Horizon horizon) {
        this.sinLat = site.latitude().sin();
        this.cosLat = site.latitude().cos();
        this.hemisphere = site.hemisphereSign();
        this.isUpright = rig.kind() == MountKind.FORK_UPRIGHT;
        this.hasFork = isUpright || rig.kind() == MountKind.FORK_ON_WEDGE;
        this.horizon = horizon;
        this.highestSkylineRad = horizon.points().stream()
                .mapToDouble(point -> point.altitude().radians())
                .max()
                .orElse(0);
        this.travel = rig.travel();
        this.sineOfHopeless = Math.sin(travel.lowestAltitude().radians() - MOST_LIFT_RAD);
        this.refraction = new Refraction(Weather.standardAt(site.heightMetres()));
        this.towardPoleRad = hasFork
                ? travel.fork()
                        .flatMap(fork -> fork.towardPole())
                        .orElse(Angle.HALF_TURN)
                        .radians()
                : Math.PI;
        this.beyondEquatorRad = hasFork
                ? travel.fork()
                        .flatMap(fork -> fork.beyondEquator())
                        .orElse(Angle.HALF_TURN)
                        .radians()
                : Math.PI;
    }

    public static PointingLimits of(Site site, Rig rig, Horizon horizon) {
        return new PointingLimits(site, rig, horizon);
    }

    /** What prevents the tube from pointing there; empty if nothing does. */
    public Optional<Barrier> barrier(HourAnglePlace place) {
        double airless = altitudeRad(place);
        Angle altitude = new Angle(apparentRad(airless));
        if (altitude.radians() < 0) {
            return Optional.of(new Barrier.BelowHorizon(altitude));
        }
        Angle skyline = horizon.altitudeAt(azimuth(place));
        if (altitude.compareTo(skyline) < 0) {
            return Optional.of(new Barrier.BehindSkyline(altitude, skyline));
        }
        if (altitude.compareTo(travel.lowestAltitude()) < 0) {
            return Optional.of(new Barrier.TooLow(altitude, travel.lowestAltitude()));
        }
        if (!isWithinCables(place)) {
            return Optional.of(new Barrier.CablesEnd(
                    place.hourAngle(), place.hourAngle().radians() < 0 ? travel.eastLimit() : travel.westLimit()));
        }
        double setting = settingRad(place, airless);
        if (setting > towardPoleRad) {
            return Optional.of(strikes(Barrier.End.BACK, setting, towardPoleRad));
        }
        if (-setting > beyondEquatorRad) {
            return Optional.of(strikes(Barrier.End.FRONT, setting, -beyondEquatorRad));
        }
        return Optional.empty();
    }

    /** Whether nothing prevents it; equivalent to an empty {@link #barrier}, but faster. */
    public boolean canReach(HourAnglePlace place) {
        double sine = sineOfAltitude(place);
        if (sine < sineOfHopeless || !isWithinCables(place)) {
            return false;
        }
        double airless = Math.asin(Math.min(1, sine));
        double lowest = travel.lowestAltitude().radians();
        double seen = airless < Math.max(lowest, highestSkylineRad) ? apparentRad(airless) : airless;
        if (seen < lowest
                || (seen < highestSkylineRad
                        && seen < horizon.altitudeAt(azimuth(place)).radians())) {
            return false;
        }
        double setting = settingRad(place, airless);
        return setting <= towardPoleRad && -setting <= beyondEquatorRad;
    }

    /**
     * When something can be observed, to a few seconds; gaps in the local horizon narrower than a degree may be missed.
     */
    public Reachability windows(SkyPath path, Interval when) {
        List<Interval> windows = new ArrayList<>();
        Instant before = when.from();
        boolean open = canReach(path.at(before));
        Instant opened = before;
        HourAnglePlace highest = path.at(before);
        while (before.isBefore(when.to())) {
            Instant after = before.plus(STEP).isAfter(when.to()) ? when.to() : before.plus(STEP);
            HourAnglePlace there = path.at(after);
            if (altitudeRad(there) > altitudeRad(highest)) {
                highest = there;
            }
            boolean then = canReach(there);
            if (then != open) {
                Instant change = change(path, before, after, open);
                if (then) {
                    opened = change;
                } else {
                    windows.add(new Interval(opened, change));
                }
                open = then;
            }
            before = after;
        }
        if (open) {
            windows.add(new Interval(opened, when.to()));
        }
        if (!windows.isEmpty()) {
            return new Reachability.Reachable(windows);
        }
        return new Reachability.Never(barrier(highest)
                .orElseThrow(() -> new IllegalStateException("in reach when highest, yet never: a step was missed")));
    }

    /** Apparent altitude, refraction included. */
    public Angle altitudeSeen(HourAnglePlace place) {
        return new Angle(apparentRad(altitudeRad(place)));
    }

    private Instant change(SkyPath path, Instant from, Instant to, boolean openAtFrom) {
        Instant low = from;
        Instant high = to;
        while (Duration.between(low, high).compareTo(GOOD_TO) > 0) {
            Instant middle = low.plus(Duration.between(low, high).dividedBy(2));
            if (canReach(path.at(middle)) == openAtFrom) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return openAtFrom ? low : high;
    }

    private boolean isWithinCables(HourAnglePlace place) {
        return isUpright
                || (place.hourAngle().compareTo(travel.eastLimit()) >= 0
                        && place.hourAngle().compareTo(travel.westLimit()) <= 0);
    }

    /** Declination of the tube toward the elevated pole; on an upright fork, the altitude. */
    private double settingRad(HourAnglePlace place, double altitudeRad) {
        return isUpright ? altitudeRad : hemisphere * place.declination().radians();
    }

    private Barrier strikes(Barrier.End end, double settingRad, double farthestRad) {
        int sign = isUpright ? 1 : hemisphere;
        return new Barrier.StrikesFork(end, new Angle(sign * settingRad), new Angle(sign * farthestRad));
    }

    private double apparentRad(double airlessRad) {
        return airlessRad + refraction.lift(new Angle(airlessRad)).radians();
    }

    private double altitudeRad(HourAnglePlace place) {
        return Math.asin(Math.max(-1, Math.min(1, sineOfAltitude(place))));
    }

    private double sineOfAltitude(HourAnglePlace place) {
        return sinLat * place.declination().sin()
                + cosLat * place.declination().cos() * place.hourAngle().cos();
    }

    private Angle azimuth(HourAnglePlace place) {
        double sinDec = place.declination().sin();
        double cosDec = place.declination().cos();
        return new Angle(Math.atan2(
                -cosDec * place.hourAngle().sin(),
                cosLat * sinDec - sinLat * cosDec * place.hourAngle().cos()));
    }
}
