package polewright.session.jsonl;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import polewright.alignment.sighting.TurnedFrames;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.session.RandomEvents;
import polewright.session.event.EventKind;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.FieldReader;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** docs/events.md agrees with the reader. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DocumentedEventsTest {
    // Approximate positions: the document only needs the names to be known.
    private static final Map<String, CatalogueStar> STARS = Map.of(
            "Polaris", CatalogueStar.fixed(Angle.ofDegrees(37.95), Angle.ofDegrees(89.26)),
            "Rigel", CatalogueStar.fixed(Angle.ofDegrees(78.63), Angle.ofDegrees(-8.2)),
            "Achernar", CatalogueStar.fixed(Angle.ofDegrees(24.43), Angle.ofDegrees(-57.24)));
    private static final BodyNames NAMES =
            name -> Optional.ofNullable(STARS.get(name)).map(star -> new FixedStar(name, star));

    private final String text = read();

    private static String read() {
        try {
            return Files.readString(Path.of("..", "docs", "events.md"));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private List<String> fenced(String language) {
        List<String> blocks = new ArrayList<>();
        Matcher matcher =
                Pattern.compile("(?ms)^```" + language + "\\n(.*?)^```$").matcher(text);
        while (matcher.find()) {
            blocks.add(matcher.group(1));
        }
        return blocks;
    }

    private List<LoggedEvent> examples() {
        return fenced("json").stream()
                .flatMap(String::lines)
                .map(line -> JsonLines.readLine(line, 20, NAMES))
                .toList();
    }

    @Test
    void everyExampleIsReadable_andEveryKindHasOne() {
        Set<EventKind> kinds = new HashSet<>();
        examples().forEach(example -> kinds.add(EventKind.of(example.event())));
        assertThat(kinds).containsExactlyInAnyOrder(EventKind.values());
    }

    @Test
    void everyKindHasItsHeading() {
        List<String> headings = new ArrayList<>();
        Matcher matcher = Pattern.compile("(?m)^### (.*)$").matcher(text);
        while (matcher.find()) {
            headings.addAll(Arrays.asList(matcher.group(1).split(", ")));
        }
        assertThat(headings)
                .isEqualTo(
                        Arrays.stream(EventKind.values()).map(EventKind::word).toList());
    }

    @Test
    void wholeNightIsReadable() throws IOException {
        List<String> nights = fenced("jsonl");
        assertThat(nights).hasSize(1);
        List<LoggedEvent> night =
                JsonLines.read(new StringReader(nights.get(0)), NAMES).orThrow();
        assertThat(night).hasSize(9);
        assertThat(night.get(7).event()).isEqualTo(new NightEvent.Withdrawn(6));
        assertThat(EventKind.of(night.get(5).event())).isEqualTo(EventKind.DRIFT);
    }

    /** The frames were made for an axis 22′ east and 14′ low; in the south it was then moved 0.4° to the left. */
    @Test
    void documentedFrames_giveTheAxisTheyWereMadeFor() {
        List<TurnedFrames> frames = examples().stream()
                .filter(e -> EventKind.of(e.event()) == EventKind.FRAMES)
                .map(e -> (TurnedFrames) ((NightEvent.SightingTaken) e.event()).sighting())
                .toList();
        Site north = Site.ofDegrees(54.6, -2.9, 240);
        Site south = Site.ofDegrees(-43.95, 170.4, 710);
        assertThat(frames).hasSize(2);
        assertIsAt(frames.get(0), north, AxisPointing.of(north, AxisOffset.ofArcminutes(22, -14)));
        AxisPointing before = AxisPointing.of(south, AxisOffset.ofArcminutes(22, -14));
        assertIsAt(
                frames.get(1), south, AxisPointing.of(before.azimuth().minus(Angle.ofDegrees(0.4)), before.altitude()));
    }

    private static void assertIsAt(TurnedFrames frames, Site site, AxisPointing axis) {
        double[] sigmas =
                frames.model(site, Weather.standardAt(site.heightMetres())).residual(axis.elevatedEnd());
        assertThat(sigmas)
                .hasSize(2)
                .satisfies(s -> assertThat(Math.hypot(s[0], s[1])).isLessThan(3));
    }

    @Test
    void everyWrittenKeyAndWordIsDocumented() {
        Set<String> written = new TreeSet<>();
        Matcher keys = Pattern.compile("\"(\\w+)\":").matcher(writtenByAllKinds());
        while (keys.find()) {
            written.add(keys.group(1));
        }
        Matcher words = Pattern.compile("\"(?:event|kind|unit|orientation|clockwise|toward|shape|body)\":\"(\\w+)\"")
                .matcher(writtenByAllKinds());
        while (words.find()) {
            written.add(words.group(1));
        }
        for (SolarSystemBody body : SolarSystemBody.values()) {
            written.add(FieldReader.word(body));
        }
        written.removeIf(word -> Pattern.compile("(?m)[`.]" + word + "[`.]|^### .*\\b" + word + "\\b")
                .matcher(text)
                .find());
        assertThat(written).as("undocumented").isEmpty();
    }

    private static String writtenByAllKinds() {
        StringBuilder all = new StringBuilder();
        RandomEvents random = new RandomEvents(8);
        for (EventKind kind : EventKind.values()) {
            for (int i = 0; i < 40; i++) {
                all.append(JsonLines.write(
                        new LoggedEvent(9, java.time.Instant.parse("2026-01-15T18:00:00Z"), random.event(kind, 9))));
            }
        }
        return all.toString();
    }
}
