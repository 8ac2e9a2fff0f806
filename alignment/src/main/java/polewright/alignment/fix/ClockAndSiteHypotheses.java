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
 * A hypothesis that the clock or the site was entered wrongly: a mistake that affects every sighting of the night.
 *
 * @param mistake what was entered wrongly
 * @param site the true site
 * @param correction what to add to every time of the night
 * @param surcharge prior cost of the mistake, in units of χ²
 */
record ClockAndSiteHypotheses(Mistake mistake, Site site, Duration correction, double surcharge) {
    private static final int HOURS = 12;
    // Summer time, a wrong time zone and the date after midnight are the commonest mistakes.
    private static final int COMMON_HOURS = 2;
    private static final int DAYS = 1;
    private static final int COMMON_CHOICES = 2 * (COMMON_HOURS + DAYS);
    private static final int CHOICES = 2 * (HOURS + DAYS);
    private static final int FARTHEST_LATITUDE_DEG = 90;

    /**
     * All hypotheses to try: clocks wrong by whole hours or by a day, and slips in entering the coordinates of the
     * site.
     */
    static Stream<ClockAndSiteHypotheses> of(Site entered) {
        return Stream.concat(clocks(entered), sites(entered).stream());
    }

    private static Stream<ClockAndSiteHypotheses> clocks(Site entered) {
        Stream<ClockAndSiteHypotheses> hours = IntStream.rangeClosed(-HOURS, HOURS)
                .filter(hour -> hour != 0)
                .mapToObj(hour -> clock(
                        entered,
                        Duration.ofHours(hour),
                        "the clock was " + count(hour, "hour") + (hour < 0 ? " fast" : " slow"),
                        Math.abs(hour) <= COMMON_HOURS));
        Stream<ClockAndSiteHypotheses> days = IntStream.rangeClosed(-DAYS, DAYS)
                .filter(day -> day != 0)
                .mapToObj(day -> clock(
                        entered,
                        Duration.ofDays(day),
                        "the date was " + count(day, "day") + (day < 0 ? " ahead" : " behind"),
                        true));
        return Stream.concat(hours, days);
    }

    private static ClockAndSiteHypotheses clock(Site entered, Duration correction, String words, boolean isCommon) {
        return new ClockAndSiteHypotheses(
                new Mistake.ClockWrong(correction, words),
                entered,
                correction,
                Rereadings.SELDOM + 2 * Math.log(isCommon ? COMMON_CHOICES : CHOICES));
    }

    private static String count(int some, String unit) {
        int number = Math.abs(some);
        return number + " " + unit + (number == 1 ? "" : "s");
    }

    private static List<ClockAndSiteHypotheses> sites(Site entered) {
        Angle latitude = entered.latitude();
        Angle longitude = entered.longitude();
        List<ClockAndSiteHypotheses> others = new ArrayList<>();
        others.add(site(
                new Site(latitude.negated(), longitude, entered.heightMetres()),
                "the site were " + (entered.isNorthern() ? "south" : "north") + " of the equator"));
        others.add(site(
                new Site(latitude, longitude.negated(), entered.heightMetres()),
                "the site were " + (longitude.radians() < 0 ? "east" : "west") + " of Greenwich"));
        if (Math.abs(longitude.degrees()) <= FARTHEST_LATITUDE_DEG) {
            others.add(site(
                    new Site(longitude, latitude, entered.heightMetres()),
                    "latitude and longitude of the site were exchanged"));
        }
        return others;
    }

    private static ClockAndSiteHypotheses site(Site meant, String words) {
        return new ClockAndSiteHypotheses(new Mistake.SiteWrong(meant, words), meant, Duration.ZERO, Rereadings.SELDOM);
    }

    /**
     * The night under this hypothesis; empty if one of its sightings could not have been made at that time and place.
     */
    Optional<Rereadings> read(CondensedPast past, Weather weather, List<Step> steps) {
        return steps(weather, steps).map(corrected -> read(past, corrected));
    }

    /**
     * The night under this hypothesis.
     *
     * @param corrected the steps with this clock and at this site
     */
    Rereadings read(CondensedPast past, List<Step> corrected) {
        CondensedPast before = site.equals(past.site())
                ? past
                : CondensedPast.none(site, past.rig()).scattering(past.scatter());
        return new Rereadings(mistake, new NightSmoother(before, corrected), surcharge);
    }

    /** The steps with the clock and site corrected; empty if one of the sightings could not have been made. */
    Optional<List<Step>> steps(Weather weather, List<Step> entered) {
        List<Step> corrected = new ArrayList<>(entered.size());
        for (Step step : entered) {
            Optional<Step> other = step instanceof Step.Sighted sighted
                    ? sighted(sighted.seq(), sighted.sighting(), weather)
                    : Optional.of(step);
            if (other.isEmpty()) {
                return Optional.empty();
            }
            corrected.add(other.get());
        }
        return Optional.of(corrected);
    }

    /**
     * A sighting with the clock and site corrected; empty if it could not have been made because its star was below the
     * horizon or the Sun was up.
     */
    Optional<Step> sighted(long seq, Sighting entered, Weather weather) {
        return isOfStars(entered) && !isDark(entered.at(), weather)
                ? Optional.empty()
                : Rereadings.reread(seq, entered.movedBy(correction), site, weather);
    }

    /** Whether the Sun was below the horizon under this hypothesis, at a time as entered. */
    boolean isDark(Instant entered, Weather weather) {
        return !SunGuard.at(ObservingMoment.of(site, SkyTime.of(entered.plus(correction)), weather))
                .isSunUp();
    }

    /** Whether the sighting needs a dark sky: by day an eye finds the Moon and planets, but hardly ever a star. */
    private static boolean isOfStars(Sighting sighting) {
        return (sighting instanceof StarDrift drift && drift.star() instanceof FixedStar)
                || (sighting instanceof StillPoint point && point.star() instanceof FixedStar);
    }
}
