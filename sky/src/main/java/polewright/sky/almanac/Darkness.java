package polewright.sky.almanac;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.Interval;
import polewright.sky.time.SkyTime;

/**
 * One night, from the Sun's highest to its highest, and how dark it gets.
 *
 * @param noonToNoon the whole of it
 * @param below when the Sun is lower than each depth; a depth that it does not reach is missing
 */
public record Darkness(Interval noonToNoon, Map<SunDepth, Interval> below) {
    private static final Duration DAY = Duration.ofDays(1);

    public Darkness {
        below = Map.copyOf(below);
    }

    /** The night that is under way, or by day the one to come. */
    public static Darkness comingAt(Site site, Instant now) {
        Instant noon = lastNoon(site, now);
        Darkness current = from(site, noon);
        boolean isOver = current.below(SunDepth.SUNSET)
                .filter(night -> now.isAfter(night.to()))
                .isPresent();
        return isOver ? from(site, noon.plus(DAY)) : current;
    }

    /** When the Sun is lower than that; empty when it does not get there. */
    public Optional<Interval> below(SunDepth depth) {
        return Optional.ofNullable(below.get(depth));
    }

    /** The darkest part that there is: of astronomical night, else of the deepest twilight that is reached. */
    public Optional<SunDepth> deepest() {
        return below.keySet().stream().max(Enum::compareTo);
    }

    private static Darkness from(Site site, Instant noon) {
        Interval whole = new Interval(noon, noon.plus(DAY));
        Map<SunDepth, Interval> below = new EnumMap<>(SunDepth.class);
        for (SunDepth depth : SunDepth.values()) {
            below(site, whole, depth.altitude()).ifPresent(interval -> below.put(depth, interval));
        }
        return new Darkness(whole, below);
    }

    private static Optional<Interval> below(Site site, Interval whole, Angle altitude) {
        List<Crossing> crossings = AltitudeCrossings.of(SolarSystemBody.SUN, altitude, site, whole);
        Optional<Instant> down = crossings.stream()
                .filter(c -> c.sense() == Crossing.Sense.SETTING)
                .map(Crossing::at)
                .findFirst();
        Optional<Instant> up = crossings.stream()
                .filter(c -> c.sense() == Crossing.Sense.RISING)
                .map(Crossing::at)
                .reduce((earlier, later) -> later);
        if (down.isEmpty() && up.isEmpty()) {
            boolean isBelow = sunAltitude(site, whole.from()).compareTo(altitude) < 0;
            return isBelow ? Optional.of(whole) : Optional.empty();
        }
        return Optional.of(new Interval(down.orElse(whole.from()), up.orElse(whole.to())));
    }

    private static Angle sunAltitude(Site site, Instant at) {
        ObservingMoment moment = moment(site, at);
        return moment.airless(Ephemeris.apparent(SolarSystemBody.SUN, moment)).altitude();
    }

    private static Instant lastNoon(Site site, Instant now) {
        ObservingMoment moment = moment(site, now);
        Angle since = moment.hourAngle(Ephemeris.apparent(SolarSystemBody.SUN, moment))
                .hourAngle()
                .wrappedPositive();
        return now.minus(Duration.ofMillis(Math.round(since.hours() * 3_600_000)));
    }

    private static ObservingMoment moment(Site site, Instant at) {
        return ObservingMoment.of(site, SkyTime.of(at), Weather.standardAt(site.heightMetres()));
    }
}
