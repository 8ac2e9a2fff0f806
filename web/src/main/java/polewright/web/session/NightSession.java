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
import polewright.store.disk.WholeFile;
import polewright.web.view.Section;

/** One log with its clock, and the addresses of its pages: the nights under the sky, or a practice's. */
public final class NightSession {
    private final String prefix;
    private final Supplier<Workbench> bench;
    private final Commands commands;
    private final SessionLog log;
    private final MinutePages pages;
    private final Map<Long, List<String>> notes;
    private final Optional<WatchedFrames> frames;

    /**
     * A desk without frames.
     *
     * @param prefix what its addresses begin with: empty, or such as {@code /practice/night}
     * @param bench its clock and log, asked for again each time: a practice's clock moves with what is done in it
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

    private NightSession(NightSession without, FrameSource source, Clock looking) {
        prefix = without.prefix;
        bench = without.bench;
        commands = without.commands;
        log = without.log;
        pages = without.pages;
        notes = without.notes;
        frames = Optional.of(WatchedFrames.of(without, source, looking));
    }

    /**
     * The night that was begun last.
     *
     * @param state where it stands now
     * @param events all of it, what was taken back too
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

    /** A desk whose bench stays the same. */
    public static NightSession of(String prefix, Workbench workbench, Commands commands) {
        return new NightSession(prefix, () -> workbench, commands);
    }

    /** The same desk with frames that come from somewhere. */
    public NightSession watching(FrameSource source, Clock looking) {
        return new NightSession(this, source, looking);
    }

    public String prefix() {
        return prefix;
    }

    /** Of its night; empty where none can come. */
    public Optional<WatchedFrames> frames() {
        return frames;
    }

    public Workbench workbench() {
        return bench.get();
    }

    /** Empty as long as no night was begun; worked out once a minute, and whenever something was logged. */
    public Optional<Tonight> tonight() {
        Optional<Tonight> tonight = log.tonight();
        boolean isByCamera = frames.filter(WatchedFrames::isCameraAtWork).isPresent();
        return isByCamera ? tonight.map(now -> new Tonight(now.id(), now.state().byCamera(), now.events())) : tonight;
    }

    /** All nights, the latest first. */
    public List<NightSummary> nights() {
        return log.nights();
    }

    /** The rigs of its nights, each as it was last, the latest first. */
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

    /** What a pier's nights came to. */
    public LoggedNights nightsAt(Pier pier) {
        return log.nightsAt(pier);
    }

    /** Keeps what a form's answer had to say besides, for the page that comes next. */
    public void keepNotes(SubmissionOutcome.Logged logged) {
        notes.put(logged.seq(), logged.notes());
    }

    /** What was said of an event when a form of this server logged it. */
    public List<String> notes(long seq) {
        return notes.getOrDefault(seq, List.of());
    }

    /** What is wrong with the log itself, for each page. */
    public List<String> trouble() {
        return log.damage().stream()
                .map(what -> "The log is damaged. What can be read is shown; nothing can be logged. At the laptop,"
                        + " the readable part can be rescued to a new file. Older copies are kept.")
                .toList();
    }

    /** How many events the log holds: another figure whenever something was added, by whichever program. */
    public long stand() {
        return log.standing().events();
    }

    /**
     * Where the log stands.
     *
     * @param events how many it holds
     * @param night the number of the night that was begun last; 0 if there is none
     */
    public record Standing(long events, long night) {}

    /** Where it stands, and with which night, in one look. */
    public Standing standing() {
        return log.standing();
    }

    /**
     * A part of a page that takes long to make and is the same for everyone: made once a minute and shared.
     *
     * @param from all that it is made from, but the time
     */
    public List<Section> eachMinute(Object from, Supplier<List<Section>> making) {
        return pages.of(from, workbench().now(), making);
    }

    /**
     * What a command writes into a file that is named to it.
     *
     * @param ran what came of the command
     * @param content of the file; empty if none was written
     */
    public record Written(CommandResult ran, Optional<String> content) {}

    /**
     * Runs a command that writes a file, and takes the file away again: what the page hands out is what the command
     * makes.
     *
     * @param naming the words of the command, given the name of a file that is not there yet
     */
    public Written writing(Function<Path, List<String>> naming) {
        try {
            Path folder = Files.createTempDirectory("polewright-page");
            Path file = folder.resolve("written");
            try {
                CommandResult ran = run(naming.apply(file));
                return new Written(
                        ran,
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

    /** Runs a command on this desk's log. */
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

    /** Without the line that points to the help of a terminal. */
    private static List<String> complaints(String err) {
        return err.lines()
                .filter(line -> !line.startsWith("Usage: ") && !line.startsWith("If it is right, ") && !line.isBlank())
                .toList();
    }
}
