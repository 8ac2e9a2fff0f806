package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.session.NightId;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.store.NightLog;

/** A night with more events than fit on one page. */
class LongNightPagesTest {
    private static final int NOTES = 700;
    private static final int MOST_ON_A_PAGE = 200;
    private static final Pattern EVENT = Pattern.compile("<li value=\"(\\d+)\"");
    private static final Pattern EARLIER = Pattern.compile("href=\"([^\"]+)\"[^>]*>\\s*Earlier events");

    @TempDir
    private Path folder;

    @Test
    void earlierEvents_areOnFurtherPages_eachEventOnce() throws Exception {
        try (ServedNight night = new ServedNight(folder, "2026-11-25T20:00:00Z")) {
            assertThat(night.type("begin", "--site", "54.60,-2.90,240").isGood())
                    .isTrue();
            String id;
            try (NightLog log = NightLog.open(folder.resolve("nights.sqlite"))) {
                List<LoggedEvent> events =
                        new ArrayList<>(log.events(log.latest().orElseThrow()));
                Instant at = events.get(0).at();
                for (long seq = 2; seq <= NOTES; seq++) {
                    events.add(new LoggedEvent(seq, at, new NightEvent.Noted("dew " + seq)));
                }
                events.add(new LoggedEvent(NOTES + 1, at, new NightEvent.Withdrawn(2)));
                NightId imported = log.importNight(events);
                id = Long.toString(imported.number());
            }

            List<Long> seen = new ArrayList<>();
            Optional<String> path = Optional.of("/nights?night=" + id);
            while (path.isPresent()) {
                String page = page(night, path.get());
                List<Long> here = EVENT.matcher(page)
                        .results()
                        .map(found -> Long.parseLong(found.group(1)))
                        .toList();
                assertThat(here).isNotEmpty().hasSizeLessThanOrEqualTo(MOST_ON_A_PAGE);
                assertThat(page.contains("dew 2 <em>(taken back)</em>")).isEqualTo(here.contains(2L));
                seen.addAll(here);
                Matcher earlier = EARLIER.matcher(page);
                path = earlier.find() ? Optional.of(earlier.group(1).replace("&amp;", "&")) : Optional.empty();
            }

            assertThat(seen)
                    .containsExactlyElementsOf(LongStream.rangeClosed(1, NOTES + 1)
                            .map(back -> NOTES + 2 - back)
                            .boxed()
                            .toList());
        }
    }

    private static String page(ServedNight night, String path) throws IOException, InterruptedException {
        return HttpClient.newHttpClient()
                .send(HttpRequest.newBuilder(URI.create(night.address(path))).build(), BodyHandlers.ofString())
                .body();
    }
}
