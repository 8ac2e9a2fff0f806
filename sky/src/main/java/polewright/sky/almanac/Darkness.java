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
import polewright.sky.time.Interval;

/**
 * One night, from noon to noon, and how dark it gets.
 *
 * <p>Noon is the Sun's upper transit. Where the Sun stays up or down all day there is still a noon and a midnight, and
 * {@link #isPolarDay} or {@link #isPolarNight} is true.
 *
 * @param noonToNoon the whole interval
 * @param below when the Sun is below each depth; a depth that it does not reach is missing
 * @param midnight when the Sun is lowest, and how low
 * @param noon when the Sun is highest, at or near one of the two ends, and how high
 */
public record Darkness(
        Interval noonToNoon,
        Map<SunDepth, Interval> below,
        AltitudeTrack.Extreme midnight,
        AltitudeTrack.Extreme noon) {
    private static final Duration DAY = Duration.ofDays(1);
    /** Where no sunrise ends a night, it counts as over halfway from midnight to noon. */
    private static final Duration HALF_OF_MORNING = Duration.ofHours(6);

    public Darkness {
        below = Map.copyOf(below);
    }

    /** The current night, or by day the next one, over the almanacs' horizon. */
    public static Darkness comingAt(Site site, Instant now) {
        return comingAt(site, now, LevelHorizon.ALMANAC);
    }

    /**
     * The current night, or by day the next one.
     *
     * @param horizon shifts sunset and sunrise; twilight is always measured from the horizontal
     */
    public static Darkness comingAt(Site site, Instant now, LevelHorizon horizon) {
        Instant noon = lastNoon(site, now);
        Darkness current = from(site, noon, horizon);
        return now.isAfter(current.over()) ? from(site, noon.plus(DAY), horizon) : current;
    }

    /** When the Sun is below that depth; empty if it does not get there. */
    public Optional<Interval> below(SunDepth depth) {
        return Optional.ofNullable(below.get(depth));
    }

    /** The deepest darkness reached: astronomical night, or else the deepest twilight. */
    public Optional<SunDepth> deepest() {
        return below.keySet().stream().max(Enum::compareTo);
    }

    /** The interval of the deepest darkness; empty if the Sun does not set. */
    public Optional<Interval> darkest() {
        return deepest().flatMap(this::below);
    }

    /** Whether the Sun does not set. */
    public boolean isPolarDay() {
        return below(SunDepth.SUNSET).isEmpty();
    }

    /** Whether the Sun does not rise. */
    public boolean isPolarNight() {
        return below(SunDepth.SUNSET).filter(noonToNoon::equals).isPresent();
    }

    /** Whether the Sun gets 18° below the horizon, so that no twilight is left. */
    public boolean hasAstronomicalDarkness() {
        return below(SunDepth.ASTRONOMICAL).isPresent();
    }

    /** From sunset to sunrise; the whole interval if the Sun does not do both. */
    public Interval sunsetToSunrise() {
        return below(SunDepth.SUNSET).orElse(noonToNoon);
    }

    private Instant over() {
        return below(SunDepth.SUNSET).map(Interval::to).orElse(midnight.at().plus(HALF_OF_MORNING));
    }

    private static Darkness from(Site site, Instant noon, LevelHorizon horizon) {
        Interval whole = new Interval(noon, noon.plus(DAY));
        AltitudeTrack sun = AltitudeTrack.of(SolarSystemBody.SUN, site, whole);
        AltitudeTrack.Extreme lowest = sun.lowest();
        Map<SunDepth, Interval> below = new EnumMap<>(SunDepth.class);
        for (SunDepth depth : SunDepth.values()) {
            Angle altitude = depth == SunDepth.SUNSET ? RisingAndSetting.altitudeOfSun(horizon) : depth.altitude();
            below(sun, whole, altitude, lowest.at()).ifPresent(interval -> below.put(depth, interval));
        }
        return new Darkness(whole, below, lowest, sun.highest());
    }

    /** The interval around midnight: near polar night the Sun can be down, up for minutes at noon, and down again. */
    private static Optional<Interval> below(AltitudeTrack sun, Interval whole, Angle altitude, Instant midnight) {
        boolean startsBelow = sun.altitude(whole.from()).compareTo(altitude) < 0;
        List<Interval> intervalsOn =
                Crossing.intervalsOn(whole, sun.crossings(altitude), Crossing.Sense.SETTING, startsBelow);
        return intervalsOn.stream()
                .filter(stretch -> stretch.contains(midnight))
                .findFirst();
    }

    private static Instant lastNoon(Site site, Instant now) {
        ObservingMoment moment = AltitudeTrack.momentAt(site, now);
        Angle since = moment.hourAngle(Ephemeris.apparent(SolarSystemBody.SUN, moment))
                .hourAngle()
                .wrappedPositive();
        return now.minus(Duration.ofMillis(Math.round(since.hours() * 3_600_000)));
    }
}
