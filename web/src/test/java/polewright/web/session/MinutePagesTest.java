package polewright.web.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import polewright.web.view.Section;

/** Sections computed once a minute for all requests. */
class MinutePagesTest {
    private static final Instant MINUTE = Instant.parse("2026-11-25T20:00:00Z");

    private final MinutePages pages = new MinutePages();
    private final AtomicInteger sections = new AtomicInteger();

    private List<Section> make() {
        return List.of(new Section.Words(Integer.toString(sections.incrementAndGet()), List.of()));
    }

    private List<Section> at(Object from, int seconds) {
        return pages.of(from, MINUTE.plusSeconds(seconds), this::make);
    }

    @Test
    void tenSimultaneousRequests_shareOneResult() throws Exception {
        ExecutorService ten = Executors.newFixedThreadPool(10);
        CountDownLatch allAreHere = new CountDownLatch(10);
        List<Future<List<Section>>> answers = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            answers.add(ten.submit(() -> {
                allAreHere.countDown();
                assertThat(allAreHere.await(10, TimeUnit.SECONDS)).isTrue();
                return at("night 1", 0);
            }));
        }

        List<Section> first = answers.get(0).get();
        for (Future<List<Section>> answer : answers) {
            assertThat(answer.get()).isSameAs(first);
        }
        ten.shutdown();
        assertThat(sections).hasValue(1);
    }

    @Test
    void differentInputs_giveDifferentResults() {
        assertThat(at("night 1", 0)).isNotEqualTo(at("night 2", 1));
        assertThat(at("night 1", 59)).isEqualTo(at("night 1", 2));
        assertThat(sections).hasValue(2);
    }

    @Test
    void nextMinute_showsTheLastResultWhileComputing_laterWaits() throws Exception {
        List<Section> first = at("night 1", 0);
        assertThat(at("night 1", 60)).isSameAs(first);
        for (int tries = 0; sections.get() < 2 || at("night 1", 60).equals(first); tries++) {
            assertThat(tries).isLessThan(1000);
            Thread.sleep(5);
        }

        assertThat(at("night 1", 300)).isNotEqualTo(first);
        assertThat(sections).hasValue(3);
    }
}
