package polewright.web.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.alignment.allowance.DiscAllowance;
import polewright.mount.rig.Rig;
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.operations.watch.SettableClock;
import polewright.planning.seasons.Pier;
import polewright.session.NightId;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.store.NightLog;

/** The pages' view of a log that other processes write to. */
class SessionLogTest {
    private static final Instant EVENING = Instant.parse("2026-11-25T20:00:10Z");
    private static final int QUICKLY = 40;

    @TempDir
    private Path folder;

    private final SettableClock clock = new SettableClock(EVENING);

    private Path file() {
        return folder.resolve("nights.sqlite");
    }

    private SessionLog log() {
        return log(System::nanoTime);
    }

    private SessionLog log(LongSupplier nanoTime) {
        Workbench bench = new Workbench(
                clock,
                Map.of("POLEWRIGHT_LOG", file().toString()),
                new PrintWriter(new StringWriter()),
                new PrintWriter(new StringWriter()),
                false,
                Pause.REAL);
        return new SessionLog(() -> bench, nanoTime);
    }

    private static NightId begin(NightLog opened, String site) {
        return opened.begin(
                new NightEvent.Begun(
                        site,
                        Site.ofDegrees(54.60, -2.90, 240),
                        Weather.standardAt(240),
                        Rig.typicalForkOnWedge(),
                        DiscAllowance.VISUAL),
                EVENING);
    }

    @Test
    void everyEventOfAnotherProgram_isSeen_evenInQuickSuccession() {
        SessionLog log = log();
        assertThat(log.tonight()).isEmpty();
        try (NightLog other = NightLog.open(file())) {
            NightId night = begin(other, "Larkfell");
            List<Long> seen = new ArrayList<>(List.of(log.standing().events()));
            for (int i = 0; i < QUICKLY; i++) {
                other.append(night, new NightEvent.Noted("dew " + i), EVENING);
                seen.add(log.standing().events());
            }

            assertThat(seen).hasSize(QUICKLY + 1).doesNotHaveDuplicates();
            assertThat(log.tonight().orElseThrow().events()).isEqualTo(other.events(night));
        }
    }

    @Test
    void replacedLog_isReadInFull() throws Exception {
        SessionLog log = log();
        try (NightLog first = NightLog.open(file())) {
            NightId night = begin(first, "Larkfell");
            first.append(night, new NightEvent.Noted("dew"), EVENING);
        }
        assertThat(log.tonight().orElseThrow().events()).hasSize(2);
        Path elsewhere = folder.resolve("other.sqlite");
        List<LoggedEvent> events;
        try (NightLog second = NightLog.open(elsewhere)) {
            NightId night = begin(second, "Tussock Flat");
            second.append(night, new NightEvent.Noted("wind"), EVENING);
            events = second.events(night);
        }
        Files.move(elsewhere, file(), StandardCopyOption.REPLACE_EXISTING);

        assertThat(log.tonight().orElseThrow().events()).isEqualTo(events);
        assertThat(log.nights().get(0).siteName()).isEqualTo("Tussock Flat");

        Files.delete(file());
        assertThat(log.tonight()).isEmpty();
        assertThat(log.standing().events()).isZero();
    }

    /** Another program has locked the file: a query would wait and then fail. */
    @Test
    void unchangedFile_isNotReopened() throws Exception {
        AtomicLong nanos = new AtomicLong();
        SessionLog log = log(nanos::get);
        NightId night;
        try (NightLog other = NightLog.open(file())) {
            night = begin(other, "Larkfell");
        }
        log.standing();
        nanos.addAndGet(TimeUnit.SECONDS.toNanos(3));
        Pier pier = Pier.of(log.tonight().orElseThrow().state().begun());
        log.nights();
        log.nightsAt(pier);

        try (Connection exclusive = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = exclusive.createStatement()) {
            statement.execute("BEGIN EXCLUSIVE");
            clock.advance(Duration.ofMinutes(1));
            assertThat(log.events(night)).hasSize(1);
            assertThat(log.tonight()).isPresent();
            assertThat(log.nights()).hasSize(1);
            assertThat(log.nightsAt(pier).records()).hasSize(1);
            assertThat(log.damage()).isEmpty();
        }
    }

    @Test
    void night_isRecomputedEveryMinute_andAfterEachEvent() {
        SessionLog log = log();
        try (NightLog other = NightLog.open(file())) {
            NightId night = begin(other, "Larkfell");
            NightSession.Tonight first = log.tonight().orElseThrow();
            clock.advance(Duration.ofSeconds(30));
            assertThat(log.tonight().orElseThrow()).isSameAs(first);

            clock.advance(Duration.ofSeconds(30));
            NightSession.Tonight next = log.tonight().orElseThrow();
            assertThat(next).isNotSameAs(first);

            other.append(night, new NightEvent.Clamped(), EVENING);
            assertThat(log.tonight().orElseThrow().state().clamped()).isTrue();
        }
    }
}
