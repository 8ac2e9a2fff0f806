package polewright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.session.NightId;
import polewright.session.RandomEvents;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.JsonLines;
import polewright.sky.InputRefused;
import polewright.sky.fields.BodyNames;

/** Random bytes in the file, as left by a failing card or another program. */
@Tag("slow")
class DamagedLogTest {
    private static final Instant AT = Instant.parse("2026-01-15T21:00:00Z");
    private static final int PAGE = 4096;

    @TempDir
    private Path folder;

    private final List<List<LoggedEvent>> nights = new ArrayList<>();
    private Path file;

    @BeforeEach
    void logThreeNights() {
        file = folder.resolve("nights.sqlite");
        try (NightLog log = NightLog.open(file)) {
            for (int seed = 1; seed <= 3; seed++) {
                List<LoggedEvent> night = new ArrayList<>(new RandomEvents(seed).night(40));
                long last = night.get(night.size() - 1).seq();
                // Too long for one page.
                night.add(new LoggedEvent(
                        last + 1, AT, new NightEvent.Noted(seed + ": " + "dew on the corrector, ".repeat(180))));
                log.importNights(List.of(night), seed == 3, Optional.empty());
                nights.add(night);
            }
        }
    }

    private void smash(int page, int from, int length) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        byte[] random = new byte[length];
        new Random(page).nextBytes(random);
        System.arraycopy(random, 0, bytes, (page - 1) * PAGE + from, length);
        Files.write(file, bytes);
    }

    private int pages() throws IOException {
        return (int) (Files.size(file) / PAGE);
    }

    private List<LoggedEvent> all() {
        return nights.stream().flatMap(List::stream).toList();
    }

    private static List<LoggedEvent> all(LogRescue.Found found) {
        return Stream.concat(found.nights().values().stream().flatMap(List::stream), found.loose().stream())
                .toList();
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4})
    void randomBytesInAPage_areDetected_andPreventAppending(int page) throws IOException {
        smash(page, 0, PAGE);
        byte[] before = Files.readAllBytes(file);
        try (NightLog log = NightLog.open(file)) {
            assertThat(log.damage()).isPresent();
            assertRefused(() -> log.append(new NightId(3), new NightEvent.Clamped(), AT));
            assertRefused(
                    () -> log.begin((NightEvent.Begun) nights.get(0).get(0).event(), AT));
            assertRefused(() -> log.importNight(nights.get(1)));
            assertRefused(log::keepCopy);
        }
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    private void assertRefused(Runnable adding) {
        assertThatThrownBy(adding::run)
                .isInstanceOf(InputRefused.class)
                .hasMessageStartingWith(file + " is damaged (")
                .hasMessageEndingWith("), so nothing was logged. Leave it as it is, rescue what can be read into a"
                        + " new file, and use another log tonight.")
                .satisfies(refused ->
                        assertThat(((InputRefused) refused).isForNow()).isTrue());
    }

    @Test
    void damageAfterOpening_isDetectedAtTheNextOpening() throws IOException {
        try (NightLog log = NightLog.open(file)) {
            assertThat(log.damage()).isEmpty();
        }
        long whole = file.toFile().lastModified();
        smash(4, 0, PAGE);
        Files.setLastModifiedTime(file, FileTime.fromMillis(whole + 60_000));
        try (NightLog log = NightLog.open(file)) {
            assertThat(log.damage()).isPresent();
        }
    }

    @Test
    void undamagedLog_isReadCompletely() throws IOException {
        LogRescue.Found found = LogRescue.read(file);
        assertThat(List.copyOf(found.nights().values())).isEqualTo(nights);
        assertThat(found.loose()).isEmpty();
        assertThat(found.nights().keySet()).containsExactly(1L, 2L, 3L);
    }

    @Test
    void anyPageLost_restIsRead_andImportedIntoANewLog() throws IOException {
        byte[] whole = Files.readAllBytes(file);
        int lostAtMost = 0;
        for (int page = 1; page <= pages(); page++) {
            Files.write(file, whole);
            smash(page, 0, PAGE);
            LogRescue.Found found = LogRescue.read(file);
            assertThat(all(found)).as("page %d", page).isSubsetOf(all()).doesNotHaveDuplicates();
            lostAtMost = Math.max(lostAtMost, all().size() - all(found).size());
            assertImportsIntoANewLog(found, folder.resolve("new" + page + ".sqlite"));
        }
        // A page of 4 KiB contains at most some tens of events.
        assertThat(lostAtMost).isBetween(1, 60);
    }

    private static void assertImportsIntoANewLog(LogRescue.Found found, Path other) throws IOException {
        StringWriter text = new StringWriter();
        for (List<LoggedEvent> night : found.nights().values()) {
            JsonLines.write(night, text);
        }
        List<List<LoggedEvent>> read = JsonLines.readNights(new StringReader(text.toString()), BodyNames.NONE);
        assertThat(read).isEqualTo(List.copyOf(found.nights().values()));
        try (NightLog log = NightLog.open(other)) {
            List<NightId> ids = log.importNights(read, true, Optional.empty());
            assertThat(ids.stream().map(log::events)).isEqualTo(read);
            assertThat(log.latest()).contains(ids.get(ids.size() - 1));
        }
    }

    @Test
    void partsOfAllPagesLost_rescueContinues_withoutInventingEvents() throws IOException {
        byte[] whole = Files.readAllBytes(file);
        Random random = new Random(7);
        for (int round = 0; round < 60; round++) {
            Files.write(file, whole);
            for (int hit = 0; hit < 8; hit++) {
                smash(1 + random.nextInt(pages()), random.nextInt(PAGE - 64), 1 + random.nextInt(64));
            }
            List<LoggedEvent> found = all(LogRescue.read(file));
            // A byte changed inside a number or a note may go unnoticed; that changes an event but does not add one.
            assertThat(found.size()).isLessThanOrEqualTo(all().size());
        }
    }

    @Test
    void eventsThatNeedALostOne_areSeparate_andTheGapIsNamed() throws IOException {
        Path small = folder.resolve("small.sqlite");
        NightEvent.Begun begun = (NightEvent.Begun) nights.get(0).get(0).event();
        try (NightLog log = NightLog.open(small)) {
            NightId night = log.begin(begun, AT);
            IntStream.range(0, 60).forEach(i -> log.append(night, new NightEvent.Noted("a".repeat(700)), AT));
            for (long seq = 2; seq <= 60; seq++) {
                log.append(night, new NightEvent.Withdrawn(seq), AT);
            }
        }
        file = small;
        byte[] whole = Files.readAllBytes(file);
        List<LogRescue.Found> found = new ArrayList<>();
        for (int page = 2; page <= pages(); page++) {
            Files.write(file, whole);
            smash(page, 0, PAGE);
            found.add(LogRescue.read(file));
        }
        // One page contained only some of the notes: their withdrawals remain without them.
        assertThat(found).anySatisfy(one -> {
            assertThat(one.loose()).isNotEmpty().allMatch(event -> event.event() instanceof NightEvent.Withdrawn);
            assertThat(one.missing()).singleElement().asString().matches("#\\d+ to #\\d+ of night 1");
        });
    }

    @Test
    void fileThatIsNotALog_hasNoEvents() throws IOException {
        for (String text : List.of("", "Remember the dew heater. ".repeat(900))) {
            Path other = Files.writeString(folder.resolve("notes.txt"), text);
            LogRescue.Found found = LogRescue.read(other);
            assertThat(found.nights()).isEmpty();
            assertThat(found.loose()).isEmpty();
        }
    }

    /** Rows that claim to be longer than the file: each would allocate the claimed size. */
    @Test
    void rowsLongerThanTheFile_allocateNoMemory() {
        ByteBuffer bytes = ByteBuffer.allocate(PAGE);
        bytes.put(100, (byte) 10).putShort(103, (short) 1000);
        for (int i = 0; i < 1000; i++) {
            bytes.putShort(108 + 2 * i, (short) 2200);
        }
        // 48 million as a variable-length integer; the part of its row on the page fits.
        bytes.put(2200, new byte[] {(byte) 0x97, (byte) 0x80, (byte) 0x80, 0});
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        assertThat(new LogPages(bytes.array()).rows()).isEmpty();
        assertThat(threads.getCurrentThreadAllocatedBytes() - before).isLessThan(10_000_000);
    }
}
