package polewright.report.text;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.sky.PlainNumber;
import polewright.sky.almanac.Crossing;
import polewright.sky.almanac.Darkness;
import polewright.sky.almanac.LevelHorizon;
import polewright.sky.almanac.LunarPhase;
import polewright.sky.almanac.MoonTonight;
import polewright.sky.almanac.SunDepth;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.Interval;

/** Darkness, twilight and the Moon in words: what an observer wants to know before carrying anything outside. */
public final class DarknessWords {
    /** A noticeable shift of sunset. */
    private static final Duration WORTH_SAYING = Duration.ofSeconds(90);

    private static final Duration SHORT = Duration.ofMinutes(20);

    private DarknessWords() {}

    /**
     * The times in order by day, then a sentence each on darkness and the Moon.
     *
     * @param weather refraction conditions of the site, for a note if they shift sunset by more than a minute and a
     *     half
     * @param zone of all times
     */
    public static List<String> of(Site site, Weather weather, Darkness darkness, MoonTonight moon, ZoneId zone) {
        List<String> lines = new ArrayList<>();
        for (Day day : days(darkness, zone)) {
            lines.add(day.heading() + ":");
            day.times()
                    .forEach(timed -> lines.add(String.format(Locale.ROOT, "  %-29s %s", timed.what(), timed.time())));
        }
        lines.addAll(sentences(site, weather, darkness, moon, zone));
        return lines;
    }

    /** A sentence each on darkness and the Moon. */
    public static List<String> sentences(Site site, Weather weather, Darkness darkness, MoonTonight moon, ZoneId zone) {
        NightClock clock = new NightClock(zone, darkness.noonToNoon());
        List<String> lines = new ArrayList<>();
        lines.add(dark(darkness, clock));
        lines.add(moon(darkness, moon, clock));
        airNote(site, weather, darkness).ifPresent(lines::add);
        return lines;
    }

    private record Event(Instant at, String what) {}

    /** An event and its local time. */
    public record Timed(String what, String time) {}

    /** The times of one day. */
    public record Day(String heading, List<Timed> times) {
        public Day {
            times = List.copyOf(times);
        }
    }

    /** The beginning and end of each twilight, day by day. */
    public static List<Day> days(Darkness darkness, ZoneId zone) {
        NightClock clock = new NightClock(zone, darkness.noonToNoon());
        List<Event> events = new ArrayList<>();
        for (SunDepth depth : SunDepth.values()) {
            darkness.below(depth).ifPresent(interval -> {
                if (interval.from().isAfter(darkness.noonToNoon().from())) {
                    events.add(new Event(interval.from(), ends(depth)));
                }
                if (interval.to().isBefore(darkness.noonToNoon().to())) {
                    events.add(new Event(interval.to(), begins(depth)));
                }
            });
        }
        events.sort(Comparator.comparing(Event::at));
        Instant first = darkness.noonToNoon().from();
        LocalDate day = clock.date(first);
        String heading = "Night from " + clock.day(first) + zoneNote(darkness, clock);
        List<Day> days = new ArrayList<>();
        List<Timed> times = new ArrayList<>();
        for (Event event : events) {
            if (!clock.date(event.at()).equals(day)) {
                days.add(new Day(heading, times));
                times = new ArrayList<>();
                day = clock.date(event.at());
                heading = clock.day(event.at());
            }
            times.add(new Timed(event.what(), clock.withZone(event.at())));
        }
        days.add(new Day(heading, times));
        return days;
    }

    private static String zoneNote(Darkness darkness, NightClock clock) {
        if (clock.zoneChanges()) {
            return "; the clocks change, " + clock.zoneAt(darkness.noonToNoon().from()) + " to "
                    + clock.zoneAt(darkness.noonToNoon().to());
        }
        return ", times in " + clock.zoneAt(darkness.noonToNoon().from());
    }

    private static String ends(SunDepth depth) {
        return depth == SunDepth.SUNSET ? "Sun sets" : capital(depth.words()) + " ends";
    }

    private static String begins(SunDepth depth) {
        return depth == SunDepth.SUNSET ? "Sun rises" : capital(depth.words()) + " begins";
    }

    private static String dark(Darkness darkness, NightClock clock) {
        double lowestDeg = darkness.midnight().altitude().degrees();
        if (darkness.isPolarDay()) {
            return "No night: the Sun does not set. "
                    + (lowestDeg > 0
                            ? "Lowest at "
                                    + clock.inSentence(darkness.midnight().at()) + ", it is "
                                    + tenths(Math.ceil(lowestDeg * 10)) + " up."
                            : "Lowest at "
                                    + clock.inSentence(darkness.midnight().at()) + ", on the horizon.");
        }
        String polar = darkness.isPolarNight()
                ? "The Sun does not rise; at noon it is still "
                        + tenths(Math.floor(Math.abs(darkness.noon().altitude().degrees()) * 10))
                        + " below the horizon. "
                : "";
        Optional<Interval> astronomical = darkness.below(SunDepth.ASTRONOMICAL);
        if (astronomical.isPresent()) {
            if (astronomical.get().equals(darkness.noonToNoon())) {
                return polar + "Astronomical darkness for 24 hours.";
            }
            return polar + "Astronomical darkness from " + clock.span(astronomical.get()) + ": "
                    + hours(astronomical.get().length()) + ".";
        }
        return polar + "No astronomical darkness: the Sun only reaches " + tenths(Math.floor(-lowestDeg * 10))
                + " below the horizon (18° is needed). Twilight all night, darkest at "
                + clock.inSentence(darkness.midnight().at()) + ".";
    }

    private static String moon(Darkness darkness, MoonTonight moon, NightClock clock) {
        List<String> parts = new ArrayList<>();
        parts.add(phase(moon.phase()));
        for (Crossing crossing : moon.crossings()) {
            parts.add(
                    (crossing.sense() == Crossing.Sense.RISING ? "rises " : "sets ") + clock.inSentence(crossing.at()));
        }
        if (moon.crossings().isEmpty()) {
            String allNight = darkness.isPolarDay() || darkness.isPolarNight() ? "all day and night" : "all night";
            parts.add(moon.up().isEmpty() ? "below the horizon " + allNight : "up " + allNight);
        }
        darkness.deepest().filter(depth -> depth != SunDepth.SUNSET).ifPresent(depth -> {
            boolean isNight = depth == SunDepth.ASTRONOMICAL;
            if (moon.upInDarkest().isEmpty() && !moon.crossings().isEmpty()) {
                parts.add(isNight ? "no Moon while it is dark" : "no Moon in the darkest part");
            } else if (moon.moonless().isEmpty() && !moon.crossings().isEmpty()) {
                parts.add(isNight ? "up the whole time it is dark" : "up throughout the darkest part");
            } else if (!moon.upInDarkest().isEmpty()
                    && moon.moonless().stream().anyMatch(DarknessWords::isWorthSaying)) {
                parts.add((isNight ? "dark and moonless from " : "darkest part moonless from ")
                        + String.join(
                                " and from ",
                                moon.moonless().stream()
                                        .filter(DarknessWords::isWorthSaying)
                                        .map(clock::span)
                                        .toList()));
            }
        });
        return "Moon: " + String.join("; ", parts) + ".";
    }

    /** A shorter interval is useless. */
    private static boolean isWorthSaying(Interval moonless) {
        return moonless.length().compareTo(SHORT) >= 0;
    }

    /** {@code 63 % lit, waxing gibbous}; never 100 % nor 0 % by rounding alone. */
    private static String phase(LunarPhase phase) {
        double percent = phase.litShare() * 100;
        String share = percent > 99.5 ? "over 99 %" : percent < 0.5 ? "under 1 %" : Math.round(percent) + " %";
        return Wrapping.unbroken(share + " lit") + ", " + phase.words();
    }

    private static Optional<String> airNote(Site site, Weather weather, Darkness darkness) {
        Optional<Interval> usual = darkness.below(SunDepth.SUNSET);
        if (usual.isEmpty() || darkness.isPolarNight()) {
            return Optional.empty();
        }
        LevelHorizon here = LevelHorizon.ALMANAC.inAirOf(weather);
        Optional<Interval> inThisAir =
                Darkness.comingAt(site, darkness.midnight().at(), here).below(SunDepth.SUNSET);
        Duration later = inThisAir
                .map(night -> Duration.between(usual.get().from(), night.from()))
                .orElse(Duration.ZERO);
        if (later.abs().compareTo(WORTH_SAYING) < 0) {
            return Optional.empty();
        }
        return Optional.of("With this pressure and temperature, refraction at the horizon is "
                + AngleWords.size(here.refraction()) + ", not the almanacs' 34′. The Sun sets about "
                + TimeSpans.about(later.abs().toSeconds() / 60.0) + (later.isNegative() ? " earlier" : " later")
                + " and rises that much " + (later.isNegative() ? "later." : "earlier."));
    }

    private static String tenths(double tenthsOfDegree) {
        return PlainNumber.of(tenthsOfDegree / 10) + "°";
    }

    /** {@code 11 h 38 min}. */
    private static String hours(Duration length) {
        long minutes = Math.round(length.toSeconds() / 60.0);
        return Wrapping.unbroken(minutes < 60 ? minutes + " min" : minutes / 60 + " h " + minutes % 60 + " min");
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
