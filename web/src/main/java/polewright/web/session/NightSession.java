package polewright.web.session;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
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
import polewright.web.view.Section;

/** One log with its clock and the addresses of its pages: that of the real sky, or that of a practice. */
public final class NightSession {
    private final String prefix;
    private final Supplier<Workbench> bench;
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
    public NightSession(String prefix, Supplier<Workbench> bench) {
        this.prefix = prefix;
        this.bench = bench;
        log = new SessionLog(bench);
        pages = new MinutePages();
        notes = new ConcurrentHashMap<>();
        frames = Optional.empty();
    }

    private NightSession(NightSession without, FrameSource source, Clock realTime) {
        prefix = without.prefix;
        bench = without.bench;
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
    public static NightSession of(String prefix, Workbench workbench) {
        return new NightSession(prefix, () -> workbench);
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
     * The log, to add to it.
     *
     * @throws OperationFailed if there is none yet
     */
    public NightLog openLog() {
        Path file = workbench().defaultLog();
        if (!Files.exists(file)) {
            throw new OperationFailed("no night has begun yet. Use {do:begin} first.");
        }
        return NightLog.open(file);
    }
}
