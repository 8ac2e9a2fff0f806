package polewright.web.session;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.function.Supplier;
import polewright.mount.rig.Rig;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.seasons.LoggedNights;
import polewright.planning.seasons.Pier;
import polewright.session.NightId;
import polewright.session.NightState;
import polewright.session.NightSummary;
import polewright.session.event.LoggedEvent;
import polewright.store.NightLog;
import polewright.store.disk.WholeFile;
import polewright.web.view.Section;

/** One log with its clock and the addresses of its pages: that of the real sky, or that of a practice. */
public final class NightSession {
    private final String prefix;
    private final Supplier<Workbench> bench;
    private final Commands commands;
    private final SessionLog log;
    private final MinutePages pages;
    private final Map<Long, List<String>> notes;
    private final Optional<WatchedFrames> frames;

    /**
     * A session without frames.
     *
     * @param prefix what its addresses begin with: empty, or for example {@code /practice/night}
     * @param bench its clock and log, looked up each time: a practice's clock moves with its actions
     */
    public NightSession(String prefix, Supplier<Workbench> bench, Commands commands) {
        this.prefix = prefix;
        this.bench = bench;
        this.commands = commands;
        log = new SessionLog(bench);
        pages = new MinutePages();
        notes = new ConcurrentHashMap<>();
        frames = Optional.empty();
    }

    private NightSession(NightSession without, FrameSource source, Clock realTime) {
        prefix = without.prefix;
        bench = without.bench;
        commands = without.commands;
        log = without.log;
        pages = without.pages;
        notes = without.notes;
        frames = Optional.of(WatchedFrames.of(without, source, realTime));
    }

    /**
     * The night that was begun last.
     *
     * @param state its current state
     * @param events all its events, including those taken back
     */
    public record Tonight(NightId id, NightState state, List<LoggedEvent> events) {
        public Tonight {
            events = List.copyOf(events);
        }

        /** The number of the last event. */
        public long lastSeq() {
            return events.get(events.size() - 1).seq();
        }
    }

    /** A session whose workbench stays the same. */
    public static NightSession of(String prefix, Workbench workbench, Commands commands) {
        return new NightSession(prefix, () -> workbench, commands);
    }

    /** The same session with frames from this source. */
    public NightSession watching(FrameSource source, Clock realTime) {
        return new NightSession(this, source, realTime);
    }

    public String prefix() {
        return prefix;
    }

    /** The frames of its night; empty if none can come. */
    public Optional<WatchedFrames> frames() {
        return frames;
    }

    public Workbench workbench() {
        return bench.get();
    }

    /** Empty until a night has begun; computed once a minute, and whenever something has been logged. */
    public Optional<Tonight> tonight() {
        Optional<Tonight> tonight = log.tonight();
        boolean isByCamera = frames.filter(WatchedFrames::isCameraAtWork).isPresent();
        return isByCamera ? tonight.map(now -> new Tonight(now.id(), now.state().byCamera(), now.events())) : tonight;
    }

    /** All nights, the latest first. */
    public List<NightSummary> nights() {
        return log.nights();
    }

    /** The rigs of its nights, each in its last state, the latest first. */
    public List<Rig> rigs() {
        return log.rigs();
    }

    /**
     * All events of a night.
     *
     * @throws polewright.sky.InputRefused if there is no such night
     */
    public List<LoggedEvent> events(NightId night) {
        return log.events(night);
    }

    /** The results of the nights at a pier. */
    public LoggedNights nightsAt(Pier pier) {
        return log.nightsAt(pier);
    }

    /** Keeps the notes of a submission for the page that is shown next. */
    public void keepNotes(SubmissionOutcome.Logged logged) {
        notes.put(logged.seq(), logged.notes());
    }

    /** The notes on an event that a form of this server logged. */
    public List<String> notes(long seq) {
        return notes.getOrDefault(seq, List.of());
    }

    /** Problems with the log itself, shown on every page. */
    public List<String> problems() {
        return log.damage().stream()
                .map(what -> "The log is damaged. What can be read is shown; nothing can be logged. At the laptop,"
                        + " the readable part can be rescued to a new file. Older copies are kept.")
                .toList();
    }

    /** The number of events in the log, which changes whenever any program adds something. */
    public long eventCount() {
        return log.standing().events();
    }

    /**
     * The extent of the log.
     *
     * @param events how many it holds
     * @param night the number of the most recent night; 0 if there is none
     */
    public record Standing(long events, long night) {}

    /** The number of events and the most recent night, read together. */
    public Standing standing() {
        return log.standing();
    }

    /**
     * Sections that take long to make and are the same for everyone: computed once a minute and shared.
     *
     * @param from everything they depend on, except the time
     */
    public List<Section> eachMinute(Object from, Supplier<List<Section>> making) {
        return pages.of(from, workbench().now(), making);
    }

    /**
     * A file written by a command.
     *
     * @param result the result of the command
     * @param content of the file; empty if none was written
     */
    public record Written(CommandResult result, Optional<String> content) {}

    /**
     * Runs a command that writes a file, and deletes the file afterwards: a page offers exactly what the command
     * writes.
     *
     * @param naming gives the words of the command for the name of a file that does not exist yet
     */
    public Written writing(Function<Path, List<String>> naming) {
        try {
            Path folder = Files.createTempDirectory("polewright-page");
            Path file = folder.resolve("written");
            try {
                CommandResult result = run(naming.apply(file));
                return new Written(
                        result,
                        Files.exists(file)
                                ? Optional.of(new String(WholeFile.read(file), StandardCharsets.UTF_8))
                                : Optional.empty());
            } finally {
                Files.deleteIfExists(file);
                Files.delete(folder);
            }
        } catch (IOException e) {
            throw new OperationFailed(
                    "a temporary file cannot be written. Free some space in the folder for temporary files.");
        }
    }

    /**
     * The log, to add to it.
     *
     * @throws OperationFailed if there is none yet
     */
    public NightLog openLog() {
        Path file = workbench().defaultLog();
        if (!Files.exists(file)) {
            throw new OperationFailed("no night has begun yet. Use 'Begin a night' first.");
        }
        return NightLog.open(file);
    }

    /** Runs a command on this session's log. */
    public CommandResult run(List<String> words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Workbench workbench = workbench();
        Workbench inside = new Workbench(
                workbench.clock(),
                workbench.environment(),
                new PrintWriter(out),
                new PrintWriter(err),
                false,
                workbench.pause());
        int status = commands.run(inside, words);
        return new CommandResult(status, out.toString(), complaints(err.toString()));
    }

    /** Without the line that refers to the terminal's help. */
    private static List<String> complaints(String err) {
        return err.lines()
                .filter(line -> !line.startsWith("Usage: ") && !line.startsWith("If it is right, ") && !line.isBlank())
                .toList();
    }
}
