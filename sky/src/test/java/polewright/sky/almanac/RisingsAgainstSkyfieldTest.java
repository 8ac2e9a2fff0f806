package polewright.sky.almanac;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.AuthorityTable;
import polewright.sky.AuthorityTable.Row;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.Site;
import polewright.sky.time.Interval;

/**
 * All risings, settings, transits and twilights of a day at fifty sites and dates from one polar circle to the other,
 * against Skyfield with JPL's DE405. See authorities/risings.
 */
class RisingsAgainstSkyfieldTest {
    /** Vega with the coordinates of the script. */
    private static final SkyBody VEGA = new FixedStar(
            "Vega",
            new CatalogueStar(
                    Angle.ofHours(18 + 36 / 60.0 + 56.33635 / 3600),
                    Angle.ofDegrees(38 + 47 / 60.0 + 1.2802 / 3600),
                    200.94,
                    286.23,
                    130.23,
                    -20.6));

    private static final Duration ONE_MINUTE = Duration.ofMinutes(1);

    private record Event(String what, Instant at) {}

    static Stream<List<Row>> days() {
        Map<Integer, List<Row>> byCase = AuthorityTable.rows("risings/events.csv")
                .collect(Collectors.groupingBy(
                        row -> (int) row.number("case"), LinkedHashMap::new, Collectors.toList()));
        assertThat(byCase).hasSize(50);
        return byCase.values().stream();
    }

    @ParameterizedTest
    @MethodSource("days")
    void everyEventOfTheDayIsFound_withinOneMinute_andNoOthers(List<Row> day) {
        Row first = day.get(0);
        Site site = Site.ofDegrees(first.number("lat_deg"), first.number("lon_east_deg"), first.number("height_m"));
        Instant from = Instant.parse(first.text("from_utc"));
        List<Event> expected = new ArrayList<>(day.stream()
                .map(row -> new Event(row.text("body") + " " + row.text("event"), Instant.parse(row.text("utc"))))
                .toList());
        List<Event> found = new ArrayList<>(events(site, new Interval(from, from.plus(Duration.ofDays(1)))));
        Comparator<Event> inOrder = Comparator.comparing(Event::what).thenComparing(Event::at);
        expected.sort(inOrder);
        found.sort(inOrder);
        assertThat(found.stream().map(Event::what))
                .containsExactlyElementsOf(expected.stream().map(Event::what).toList());
        assertThat(IntStream.range(0, found.size()))
                .allSatisfy(i -> assertThat(Duration.between(
                                        expected.get(i).at(), found.get(i).at())
                                .abs())
                        .as("%s at %s", expected.get(i), found.get(i).at())
                        .isLessThan(ONE_MINUTE));
    }

    private static List<Event> events(Site site, Interval day) {
        List<Event> events = new ArrayList<>();
        AltitudeTrack sun = AltitudeTrack.of(SolarSystemBody.SUN, site, day);
        for (SunDepth depth : SunDepth.values()) {
            sun.crossings(depth.altitude())
                    .forEach(c -> events.add(new Event("SUN " + depth + "_" + c.sense(), c.at())));
        }
        for (SkyBody body : List.of(
                SolarSystemBody.MOON, SolarSystemBody.VENUS, SolarSystemBody.JUPITER, SolarSystemBody.NEPTUNE, VEGA)) {
            String name = body == VEGA ? "VEGA" : ((SolarSystemBody) body).name();
            RisingAndSetting.of(body, site, day, LevelHorizon.ALMANAC)
                    .forEach(c -> events.add(new Event(name + " " + c.sense(), c.at())));
        }
        for (SolarSystemBody body : List.of(SolarSystemBody.SUN, SolarSystemBody.MOON, SolarSystemBody.JUPITER)) {
            AltitudeTrack.of(body, site, day).transits().forEach(t -> events.add(new Event(body + " TRANSIT", t)));
        }
        return events;
    }
}
