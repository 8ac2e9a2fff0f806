package polewright.operations.practice;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.operations.LogEntry;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.session.NightId;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.simulation.fits.FitsFile;
import polewright.simulation.practice.CompletedAction;
import polewright.simulation.practice.Debrief;
import polewright.simulation.practice.ObservedReadings;
import polewright.simulation.practice.PracticeAction;
import polewright.simulation.practice.PracticeCamera;
import polewright.simulation.practice.PracticeState;
import polewright.simulation.practice.Scenario;
import polewright.store.NightLog;
import polewright.store.disk.NotWritten;
import polewright.store.disk.WholeFile;

/** The current practice night: its actions, its log, its frames, and the workbench for commands in it. */
public final class PracticeNight {
    private final Path folder;
    private final ActionFile deeds;
    private PracticeState state;

    private PracticeNight(Path folder) {
        this.folder = folder;
        this.deeds = new ActionFile(folder.resolve("deeds.jsonl"));
        this.state = state(deeds.lines());
    }

    /** The most recent one, if there is one. */
    public static Optional<PracticeNight> current(Workbench workbench) {
        return numbers(root(workbench)).max(Integer::compare).map(number -> {
            PracticeNight night = new PracticeNight(root(workbench).resolve(String.valueOf(number)));
            night.createLog();
            return night;
        });
    }

    /**
     * The most recent one.
     *
     * @throws OperationFailed if there is none
     */
    public static PracticeNight ofNow(Workbench workbench) {
        return current(workbench)
                .orElseThrow(() -> new OperationFailed("no practice has begun. Begin one with {do:practice-begin}."));
    }

    /**
     * Begins another practice.
     *
     * @param key if the last one was begun with the same key, it continues and nothing is begun
     */
    public static PracticeNight begin(Workbench workbench, Scenario scenario, Optional<String> key) {
        Path root = root(workbench);
        Optional<PracticeNight> last = current(workbench);
        if (key.isPresent() && last.flatMap(PracticeNight::key).equals(key)) {
            return last.orElseThrow();
        }
        int number = numbers(root).max(Integer::compare).orElse(0) + 1;
        Path folder = root.resolve(String.valueOf(number));
        byte[] first = (ActionLine.of(scenario, key) + "\n").getBytes(StandardCharsets.UTF_8);
        Path deeds = folder.resolve("deeds.jsonl");
        try {
            Files.createDirectories(folder.resolve("frames"));
            // Written whole or not at all: a folder without actions does not count.
            WholeFile.write(deeds, first, folder);
        } catch (IOException e) {
            throw new OperationFailed("the practice cannot be saved: "
                    + NotWritten.why(deeds, first.length).sentence(deeds));
        }
        return current(workbench).orElseThrow();
    }

    /** Changes whenever another practice is begun, or an action is completed in the last one; empty without any. */
    static Optional<String> mark(Workbench workbench) {
        return numbers(root(workbench)).max(Integer::compare).map(number -> {
            Path deeds = root(workbench).resolve(String.valueOf(number)).resolve("deeds.jsonl");
            try {
                return number + " " + Files.size(deeds);
            } catch (IOException e) {
                throw new OperationFailed("the practice's file " + deeds + " cannot be read. Check its permissions.");
            }
        });
    }

    /** Its current state. */
    public PracticeState state() {
        return state;
    }

    /** The path of its own log. */
    public Path log() {
        return folder.resolve("nights.sqlite");
    }

    /** The folder of its frames. */
    public Path frames() {
        return folder.resolve("frames");
    }

    /** The path of the frame with that number, counted from 1. */
    public Path frame(int number) {
        return frames().resolve(String.format(Locale.ROOT, "frame-%02d.fits", number));
    }

    /** A workbench for ordinary commands: with the practice's clock and log, otherwise unchanged. */
    public Workbench bench(Workbench real) {
        Map<String, String> environment = new HashMap<>(real.environment());
        environment.put("POLEWRIGHT_LOG", log().toString());
        return new Workbench(
                Clock.fixed(state.now(), real.clock().getZone()),
                Map.copyOf(environment),
                real.out(),
                real.err(),
                real.terminal(),
                real.pause());
    }

    /**
     * Carries out an action, unless one with that key was already carried out.
     *
     * @return the completed action, from now or then
     */
    public CompletedAction perform(PracticeAction action, Optional<String> key) {
        int[] index = new int[1];
        List<String> after = deeds.add(lines -> {
            for (int i = 1; i < lines.size(); i++) {
                if (key.isPresent() && ActionLine.key(lines.get(i)).equals(key)) {
                    index[0] = i - 1;
                    return Optional.empty();
                }
            }
            // An action refused here is not written.
            index[0] = state(lines).after(action).done().size() - 1;
            return Optional.of(ActionLine.of(action, key));
        });
        state = state(after);
        CompletedAction done = state.done().get(index[0]);
        if (done.seen() instanceof ObservedReadings.FrameTaken taken) {
            renderFrame(taken.number());
        }
        return done;
    }

    /** Everything that the player logged. */
    public List<LoggedEvent> events() {
        try (NightLog opened = NightLog.open(log())) {
            return opened.events(opened.latest().orElseThrow());
        }
    }

    /** The truth, and where the time was spent. */
    public Debrief debrief() {
        return Debrief.of(state, events());
    }

    private void renderFrame(int number) {
        Path file = frame(number);
        if (Files.exists(file)) {
            return;
        }
        byte[] content = FitsFile.of(PracticeCamera.frame(state, number).frame());
        try {
            // A watch of the folder must see whole frames only.
            WholeFile.write(file, content, folder);
        } catch (IOException e) {
            throw new OperationFailed("the frame cannot be saved: "
                    + NotWritten.why(file, content.length).sentence(file)
                    + " Then do the same again with the same key.");
        }
    }

    /** The log begins with the scenario's events; written here, so that an interrupted beginning is completed. */
    private void createLog() {
        List<LoggedEvent> first = state.scenario().firstEvents();
        NightEvent.Begun begun = (NightEvent.Begun) first.get(0).event();
        NightEvent work = first.get(1).event();
        Instant at = first.get(0).at();
        NightState.ModelCache models = new NightState.ModelCache();
        try (NightLog opened = NightLog.open(log())) {
            Optional<NightId> night = opened.latest();
            if (night.isEmpty()) {
                LogEntry.begin(opened, begun, List.of(work), at, models, Optional.empty());
            } else if (opened.events(night.get()).size() == 1) {
                // An older program logged the two one after the other.
                LogEntry.append(opened, night.get(), work, at, models);
            }
        }
    }

    private Optional<String> key() {
        return ActionLine.key(deeds.lines().get(0));
    }

    private static PracticeState state(List<String> lines) {
        return PracticeState.of(
                ActionLine.scenario(lines.get(0)),
                lines.stream().skip(1).map(ActionLine::deed).toList());
    }

    private static Path root(Workbench workbench) {
        return workbench.dataFolder().resolve("practice");
    }

    private static Stream<Integer> numbers(Path root) {
        if (!Files.isDirectory(root)) {
            return Stream.empty();
        }
        try (Stream<Path> folders = Files.list(root)) {
            return folders
                    .filter(folder -> Files.exists(folder.resolve("deeds.jsonl")))
                    .map(folder -> folder.getFileName().toString())
                    .filter(name -> name.matches("\\d{1,6}"))
                    .map(Integer::valueOf)
                    .toList()
                    .stream();
        } catch (IOException e) {
            throw new OperationFailed("the folder " + root + " cannot be read. Check its permissions.");
        }
    }
}
