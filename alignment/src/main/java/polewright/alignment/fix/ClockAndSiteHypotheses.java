package polewright.alignment.fix;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SunGuard;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * Another clock or another site than the night was told with: mistakes that touch all its sightings at once.
 *
 * @param mistake what was told wrongly by it
 * @param site where the night was instead
 * @param correction what to add to every time of the night
 * @param surcharge how seldom that mistake is made, in units of χ²
 */
record ClockAndSiteHypotheses(Mistake mistake, Site site, Duration correction, double surcharge) {
    private static final int HOURS = 12;
    // Changes to and from summer time, the wrong zone and the date after midnight are commoner than any other.
    private static final int COMMON_HOURS = 2;
    private static final int DAYS = 1;
    private static final int COMMON_CHOICES = 2 * (COMMON_HOURS + DAYS);
    private static final int CHOICES = 2 * (HOURS + DAYS);
    private static final int FARTHEST_LATITUDE_DEG = 90;

    /** All that are tried: clocks wrong by whole hours or by a day, and sites that a slip of the pen makes of this one. */
    static Stream<ClockAndSiteHypotheses> of(Site told) {
        return Stream.concat(clocks(told), sites(told).stream());
    }

    private static Stream<ClockAndSiteHypotheses> clocks(Site told) {
        Stream<ClockAndSiteHypotheses> hours = IntStream.rangeClosed(-HOURS, HOURS)
                .filter(hour -> hour != 0)
                .mapToObj(hour -> clock(
                        told,
                        Duration.ofHours(hour),
                        "the clock was " + count(hour, "hour") + (hour < 0 ? " fast" : " slow"),
                        Math.abs(hour) <= COMMON_HOURS));
        Stream<ClockAndSiteHypotheses> days = IntStream.rangeClosed(-DAYS, DAYS)
                .filter(day -> day != 0)
                .mapToObj(day -> clock(
                        told,
                        Duration.ofDays(day),
                        "the date was " + count(day, "day") + (day < 0 ? " ahead" : " behind"),
                        true));
        return Stream.concat(hours, days);
    }

    private static ClockAndSiteHypotheses clock(Site told, Duration correction, String words, boolean isCommon) {
        return new ClockAndSiteHypotheses(
                new Mistake.ClockWrong(correction, words),
                told,
                correction,
                Rereadings.SELDOM + 2 * Math.log(isCommon ? COMMON_CHOICES : CHOICES));
    }

    private static String count(int some, String unit) {
        int number = Math.abs(some);
        return number + " " + unit + (number == 1 ? "" : "s");
    }

    private static List<ClockAndSiteHypotheses> sites(Site told) {
        Angle latitude = told.latitude();
        Angle longitude = told.longitude();
        List<ClockAndSiteHypotheses> others = new ArrayList<>();
        others.add(site(
                new Site(latitude.negated(), longitude, told.heightMetres()),
                "the site were " + (told.isNorthern() ? "south" : "north") + " of the equator"));
        others.add(site(
                new Site(latitude, longitude.negated(), told.heightMetres()),
                "the site were " + (longitude.radians() < 0 ? "east" : "west") + " of Greenwich"));
        if (Math.abs(longitude.degrees()) <= FARTHEST_LATITUDE_DEG) {
            others.add(site(
                    new Site(longitude, latitude, told.heightMetres()),
                    "latitude and longitude of the site were exchanged"));
        }
        return others;
    }

    private static ClockAndSiteHypotheses site(Site meant, String words) {
        return new ClockAndSiteHypotheses(new Mistake.SiteWrong(meant, words), meant, Duration.ZERO, Rereadings.SELDOM);
    }

    /** The night read so; nothing if one of its sightings could not have been made then and there. */
    Optional<Rereadings> read(CondensedPast past, Weather weather, List<Step> steps) {
        return steps(weather, steps).map(otherwise -> read(past, otherwise));
    }

    /**
     * The night with these steps.
     *
     * @param otherwise steps as they were by this clock and at this site
     */
    Rereadings read(CondensedPast past, List<Step> otherwise) {
        CondensedPast before = site.equals(past.site())
                ? past
                : CondensedPast.none(site, past.rig()).scattering(past.scatter());
        return new Rereadings(mistake, new NightSmoother(before, otherwise), surcharge);
    }

    /** Steps as they were then and there; nothing if one of them is a sighting that could not have been made. */
    Optional<List<Step>> steps(Weather weather, List<Step> told) {
        List<Step> otherwise = new ArrayList<>(told.size());
        for (Step step : told) {
            Optional<Step> other = step instanceof Step.Sighted sighted
                    ? sighted(sighted.seq(), sighted.sighting(), weather)
                    : Optional.of(step);
            if (other.isEmpty()) {
                return Optional.empty();
            }
            otherwise.add(other.get());
        }
        return Optional.of(otherwise);
    }

    /** A sighting as it was then and there; nothing if it could not have been made: its star was down, or the Sun was up. */
    Optional<Step> sighted(long seq, Sighting told, Weather weather) {
        return isOfStars(told) && !isDark(told.at(), weather)
                ? Optional.empty()
                : Rereadings.reread(seq, told.movedBy(correction), site, weather);
    }

    /** Whether the Sun was down there at a time that was told. */
    boolean isDark(Instant told, Weather weather) {
        return !SunGuard.at(ObservingMoment.of(site, SkyTime.of(told.plus(correction)), weather))
                .isSunUp();
    }

    /** Whether it took a night to make it: by day an eye finds the Moon and planets, and stars hardly ever. */
    private static boolean isOfStars(Sighting sighting) {
        return (sighting instanceof StarDrift drift && drift.star() instanceof FixedStar)
                || (sighting instanceof StillPoint point && point.star() instanceof FixedStar);
    }
}
