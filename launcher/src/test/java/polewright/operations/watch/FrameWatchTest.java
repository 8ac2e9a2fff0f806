package polewright.operations.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.alignment.camera.Drive;
import polewright.launcher.Main;
import polewright.operations.CommandRun;
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.operations.camera.CameraEvening;
import polewright.operations.camera.FrameClues;
import polewright.operations.camera.NearPlace;
import polewright.session.NightState;
import polewright.session.NightSummary;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.store.NightLog;

/** Listeners receive the events of a watch in order, and the log is the same for a command and for a page. */
@Tag("slow")
class FrameWatchTest {
    private static final Path LYING_HEADERS = Path.of("..", "image/src/test/resources/authorities/lying-headers");

    @TempDir
    private static Path frames;

    @TempDir
    private Path folder;

    private Path captures;
    private CommandRun person;
    private final SettableClock clock = new SettableClock(Instant.parse("2026-11-25T20:10:00Z"));
    private final Deque<Runnable> meanwhile = new ArrayDeque<>();
    private final List<WatchEvent> watchEvents = new ArrayList<>();
    private final List<LiveView.Shot> shown = new ArrayList<>();

    @BeforeAll
    static void takeFrames() {
        CameraEvening evening = CameraEvening.atLarkfell();
        evening.takeTurning(frames, 3, 30);
        evening.turnScrews(-2, 0.5);
        evening.take(frames.resolve("screw1.fits"));
    }

    @BeforeEach
    void begin() throws IOException {
        captures = Files.createDirectory(folder.resolve("captures"));
        person = begun(folder);
    }

    private static CommandRun begun(Path folder) {
        CommandRun person = new CommandRun(folder, "2026-11-25T20:10:00Z");
        person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell", "--at", "2026-11-25T19:30Z");
        return person;
    }

    private void save(String... names) {
        for (String name : names) {
            meanwhile.add(() -> copy(frames.resolve(name), captures.resolve(name)));
            // Found at one poll, and confirmed at the next.
            meanwhile.add(() -> {});
            meanwhile.add(() -> {});
        }
    }

    private static void copy(Path from, Path to) {
        try {
            Files.copy(from, to);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Workbench workbench(Path log, Clock time, Pause pause) {
        return new Workbench(
                time,
                Map.of("POLEWRIGHT_LOG", log.toString()),
                new PrintWriter(new StringWriter()),
                new PrintWriter(new StringWriter()),
                false,
                pause);
    }

    private Pause playing() {
        return length -> {
            clock.advance(length);
            Runnable next = meanwhile.poll();
            if (next != null) {
                next.run();
            }
        };
    }

    private FrameWatch watch(Workbench workbench, boolean turning, WatchListener listener) {
        return watch(FrameFolder.of(captures, workbench.clock(), false), workbench, turning, listener);
    }

    private FrameWatch watch(FrameFolder folder, Workbench workbench, boolean turning, WatchListener listener) {
        FrameClues clues = new FrameClues(
                Optional.of(new NearPlace.Pole(Optional.empty())),
                Angle.ofDegrees(25),
                FrameClues.NONE.scale(),
                FrameClues.NONE.focalLengthMm(),
                FrameClues.NONE.pixelMicrons(),
                FrameClues.NONE.mirrored(),
                Optional.of(CameraEvening.LARKFELL),
                FrameClues.NONE.decoding());
        return FrameWatch.of(
                folder,
                new FrameWatch.Task(turning, clues, Drive.NOT_TOLD),
                night(),
                () -> NightLog.open(person.log()),
                workbench,
                listener);
    }

    private NightState night() {
        try (NightLog log = NightLog.open(person.log())) {
            return NightState.of(log.events(log.latest().orElseThrow()));
        }
    }

    private static List<LoggedEvent> events(CommandRun person) {
        try (NightLog log = NightLog.open(person.log())) {
            return log.events(log.latest().orElseThrow());
        }
    }

    private void watchUntilIdle() {
        watchUntilIdle(FrameFolder.of(captures, clock, false));
    }

    private void watchUntilIdle(FrameFolder folder) {
        LiveView view = new LiveView(CameraEvening.LARKFELL, shown::add);
        FrameWatch watch = watch(folder, workbench(person.log(), clock, playing()), false, event -> {
            watchEvents.add(event);
            view.on(event);
        });
        watch.run(new FrameWatch.Until(OptionalLong.empty(), Optional.of(Duration.ofSeconds(3))), () -> false);
    }

    private List<String> eventKinds() {
        return watchEvents.stream()
                .map(event -> event.getClass().getSimpleName())
                .toList();
    }

    @Test
    void events_arriveInOrder() {
        save("turn1.fits", "turn2.fits", "screw1.fits");
        watchUntilIdle();
        assertThat(eventKinds())
                .containsExactly(
                        "Arrived", "Placed", "Told", // a place
                        "Arrived", "Placed", "Told", "Logged", // the axis
                        "Arrived", "Placed", "Logged", "Told", // the screws, by what the night has learned with them
                        "Ended");
        assertThat(watchEvents.stream()
                        .filter(WatchEvent.Told.class::isInstance)
                        .map(clues ->
                                ((WatchEvent.Told) clues).step().getClass().getSimpleName()))
                .containsExactly("Placed", "AxisFound", "ScrewsFollowed");
    }

    /** A capture program keeps saving while one watch ends and the next begins. */
    @Test
    void frameSavedBetweenTwoWatches_isTakenByTheSecond() {
        FrameFolder kept = FrameFolder.of(captures, clock, false);
        watchUntilIdle(kept);
        copy(frames.resolve("turn1.fits"), captures.resolve("turn1.fits"));
        watchUntilIdle(kept);
        assertThat(eventKinds()).containsExactly("Ended", "Arrived", "Placed", "Told", "Ended");
    }

    @Test
    void pageAndCommand_logTheSameEvents() throws IOException {
        save("turn1.fits", "turn2.fits", "turn3.fits", "screw1.fits");
        watchUntilIdle();
        List<LoggedEvent> byPage = events(person);

        Path other = Files.createDirectory(folder.resolve("other"));
        person = begun(other);
        captures = Files.createDirectory(other.resolve("captures"));
        clock.advance(Duration.between(clock.instant(), Instant.parse("2026-11-25T20:10:00Z")));
        save("turn1.fits", "turn2.fits", "turn3.fits", "screw1.fits");
        int status = Main.run(
                workbench(person.log(), clock, playing()),
                "watch",
                captures.toString(),
                "--near",
                "pole",
                "--within",
                "25",
                "--until-idle",
                "3");
        assertThat(status).isZero();
        assertThat(events(person)).usingRecursiveComparison().isEqualTo(byPage);
        // Begin, two frames, three frames, undo of the two, the turn, the result after the turn.
        assertThat(byPage).hasSize(6);
    }

    @Test
    void axisAfterTheScrews_isLoggedInTheNightOfTheTurn() {
        save("turn1.fits", "turn2.fits", "screw1.fits");
        meanwhile.add(() -> person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell", "--again"));
        watchUntilIdle();
        try (NightLog log = NightLog.open(person.log())) {
            List<NightSummary> nights = log.nights();
            assertThat(nights).hasSize(2);
            assertThat(log.events(nights.get(0).id()))
                    .extracting(LoggedEvent::event)
                    .noneMatch(NightEvent.SightingTaken.class::isInstance)
                    .noneMatch(NightEvent.ScrewsTurned.class::isInstance);
            assertThat(log.events(nights.get(1).id()))
                    .extracting(LoggedEvent::event)
                    .hasAtLeastOneElementOfType(NightEvent.ScrewsTurned.class);
        }
    }

    @Test
    void framesOfAnotherNight_areNotLogged() {
        save("turn1.fits");
        meanwhile.add(() -> person.good("begin", "--site", "54.60,-2.90,240", "--name", "Larkfell"));
        save("turn2.fits");
        watchUntilIdle();
        assertThat(watchEvents)
                .filteredOn(WatchEvent.NotLogged.class::isInstance)
                .singleElement()
                .satisfies(event ->
                        assertThat(((WatchEvent.NotLogged) event).line()).contains("another night has begun"));
        assertThat(events(person)).extracting(LoggedEvent::event).noneMatch(NightEvent.SightingTaken.class::isInstance);
    }

    @Test
    void slowFrame_isShownBeforeItsStarsAreFound() {
        save("turn1.fits");
        LiveView view = new LiveView(CameraEvening.LARKFELL, shown::add, Runnable::run);
        watch(workbench(person.log(), clock, playing()), false, view)
                .run(new FrameWatch.Until(OptionalLong.empty(), Optional.of(Duration.ofSeconds(3))), () -> false);
        assertThat(shown).extracting(LiveView.Shot::isPending).containsExactly(true, false);
        assertThat(shown).extracting(LiveView.Shot::name).containsOnly("turn1.fits");
    }

    @Test
    void eachFrame_isShownWithItsResult() {
        save("turn1.fits", "turn2.fits", "screw1.fits");
        watchUntilIdle();
        assertThat(shown).extracting(LiveView.Shot::number).containsExactly(1L, 2L, 3L);
        assertThat(shown).extracting(LiveView.Shot::name).containsExactly("turn1.fits", "turn2.fits", "screw1.fits");
        assertThat(shown).allSatisfy(shot -> assertThat(shot.frame()).isPresent());
        assertThat(shown.stream().map(shot -> shot.frame().orElseThrow().axis().isPresent()))
                .containsExactly(false, true, true);
        assertThat(shown.get(2).step()).containsInstanceOf(WatchStep.ScrewsFollowed.class);
    }

    @Test
    void frameWithoutStars_isShownWithTheReasonForRejection() {
        save("turn1.fits");
        meanwhile.add(() -> CameraEvening.write(captures.resolve("cloud.fits"), Clouds.frame()));
        watchUntilIdle();
        LiveView.Shot cloud = shown.get(1);
        assertThat(cloud.name()).isEqualTo("cloud.fits");
        assertThat(cloud.frame()).isEmpty();
        assertThat(cloud.refusal().orElseThrow()).startsWith("cloud.fits: ");
        assertThat(cloud.picture().width()).isEqualTo(640);
    }

    @Test
    void falseHeader_isRefusedByName_andTheNextFrameIsSolved() {
        for (String name : List.of("naxis-maxint.fits", "znaxis-maxint.fits", "ztile-2pow32.fits")) {
            meanwhile.add(() -> copy(LYING_HEADERS.resolve(name), captures.resolve(name)));
        }
        save("turn1.fits");
        watchUntilIdle();
        assertThat(watchEvents)
                .filteredOn(WatchEvent.Refused.class::isInstance)
                .extracting(refused -> ((WatchEvent.Refused) refused).frame())
                .containsExactlyInAnyOrder("naxis-maxint.fits", "znaxis-maxint.fits", "ztile-2pow32.fits");
        assertThat(watchEvents)
                .filteredOn(WatchEvent.Told.class::isInstance)
                .extracting(clues -> ((WatchEvent.Told) clues).frame().name())
                .containsExactly("turn1.fits");
    }

    @Test
    void closingABackgroundWatch_logsTheAxisAfterTheScrews() throws InterruptedException {
        BlockingQueue<WatchEvent> events = new LinkedBlockingQueue<>();
        Workbench bench = workbench(person.log(), clock, Pause.REAL);
        Workbench real = new Workbench(
                Clock.systemUTC(), bench.environment(), bench.out(), bench.err(), bench.terminal(), bench.pause());
        try (BackgroundWatch running = BackgroundWatch.start(watch(real, false, events::add), events::add, real)) {
            for (String name : List.of("turn1.fits", "turn2.fits", "screw1.fits")) {
                copy(frames.resolve(name), captures.resolve(name));
                awaitResult(events);
            }
            assertThat(running.isRunning()).isTrue();
        }
        assertThat(List.copyOf(events)).last().isInstanceOf(WatchEvent.Ended.class);
        assertThat(events(person)).hasSize(4);
    }

    private static void awaitResult(BlockingQueue<WatchEvent> events) throws InterruptedException {
        WatchEvent event;
        do {
            event = events.poll(60, TimeUnit.SECONDS);
            assertThat(event).as("something happens within a minute").isNotNull();
            assertThat(event).isNotInstanceOf(WatchEvent.Refused.class);
        } while (!(event instanceof WatchEvent.Told));
    }
}
