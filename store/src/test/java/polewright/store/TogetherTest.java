package polewright.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.session.NightId;
import polewright.session.RandomEvents;
import polewright.session.event.EventKind;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/** Concurrent use of one log. */
@Tag("slow")
class TogetherTest {
    private static final Instant AT = Instant.parse("2026-01-15T21:00:00Z");
    private static final int EACH = 40;
    private static final int EACH_PROGRAM = 100;

    @TempDir
    private Path folder;

    private static NightEvent.Begun begun() {
        return (NightEvent.Begun) new RandomEvents(1).event(EventKind.BEGIN, 1);
    }

    @Test
    void threePrograms_addThreeHundredEvents_eachOnce() throws Exception {
        Path file = folder.resolve("nights.db");
        NightId night;
        try (NightLog log = NightLog.open(file)) {
            night = log.begin(begun(), AT);
        }
        List<Process> programs = new ArrayList<>();
        for (String mark : List.of("laptop", "phone", "camera")) {
            programs.add(EndlessWriter.start(file, mark, EACH_PROGRAM));
        }
        List<String> acknowledged = new ArrayList<>();
        for (Process process : programs) {
            try (var output = process.inputReader()) {
                output.lines().skip(1).forEach(acknowledged::add);
            }
            assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(process.exitValue()).isZero();
        }
        try (NightLog log = NightLog.open(file)) {
            List<LoggedEvent> events = log.events(night);
            assertThat(acknowledged).hasSize(3 * EACH_PROGRAM);
            assertThat(events).extracting(LoggedEvent::seq).isEqualTo(upTo(1 + 3 * EACH_PROGRAM));
            assertThat(events.stream().skip(1).map(e -> e.seq() + " " + ((NightEvent.Noted) e.event()).text()))
                    .containsExactlyInAnyOrderElementsOf(acknowledged);
        }
    }

    @Test
    void threads_mayShareALogOrOpenTheirOwn() throws Exception {
        Path file = folder.resolve("nights.db");
        try (NightLog shared = NightLog.open(file);
                NightLog other = NightLog.open(file)) {
            NightId night = shared.begin(begun(), AT);
            List<Callable<List<Long>>> tasks =
                    List.of(() -> append(shared, night), () -> append(shared, night), () -> append(other, night));
            TreeSet<Long> seqs = new TreeSet<>(List.of(1L));
            for (List<Long> some : together(tasks)) {
                seqs.addAll(some);
            }
            assertThat(List.copyOf(seqs)).isEqualTo(upTo(1 + 3 * EACH));
            assertThat(shared.events(night)).hasSize(1 + 3 * EACH);
        }
    }

    @Test
    void newLog_isCreatedOnce_whenSeveralOpenItAtOnce() throws Exception {
        for (int round = 0; round < 3; round++) {
            Path file = folder.resolve("new" + round + ".db");
            Callable<List<Long>> open = () -> {
                try (NightLog log = NightLog.open(file)) {
                    return List.of(log.begin(begun(), AT).number());
                }
            };
            TreeSet<Long> nights = new TreeSet<>();
            for (List<Long> night : together(List.of(open, open, open))) {
                nights.addAll(night);
            }
            assertThat(nights).containsExactly(1L, 2L, 3L);
        }
    }

    private static <T> List<T> together(List<Callable<T>> tasks) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(tasks.size());
        try {
            List<T> results = new ArrayList<>();
            for (Future<T> future : threads.invokeAll(tasks)) {
                results.add(future.get());
            }
            return results;
        } finally {
            threads.shutdownNow();
        }
    }

    private static List<Long> append(NightLog log, NightId night) {
        List<Long> seqs = new ArrayList<>();
        for (int i = 0; i < EACH; i++) {
            seqs.add(log.append(night, new NightEvent.Knocked(), AT).seq());
        }
        return seqs;
    }

    private static List<Long> upTo(long last) {
        return LongStream.rangeClosed(1, last).boxed().toList();
    }
}
