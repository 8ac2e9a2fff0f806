package polewright.web.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import polewright.mount.rig.Rig;
import polewright.operations.Workbench;
import polewright.operations.seasons.LoggedNights;
import polewright.operations.seasons.LoggedRigs;
import polewright.planning.seasons.Pier;
import polewright.session.NightId;
import polewright.session.NightState;
import polewright.session.NightSummary;
import polewright.session.event.LoggedEvent;
import polewright.store.NightLog;

/**
 * A desk's log as all its pages read it: the file is opened only when it has changed, only new events are read, and what
 * they come to is worked out once a minute for everyone who asks. Safe for use by several threads.
 *
 * <p>Size and time say whether the file has changed, which costs some microseconds; SQLite is asked again only
 * when those are new, and for a while after, because the clock of a file system may be coarse. The file itself must not be
 * opened here in any other way than by SQLite: to close it would release the locks that SQLite holds on it in this process.
 */
final class SessionLog {
    // The coarsest clock of a file system in use is FAT's, which counts in two seconds.
    private static final long COARSEST_NANOS = TimeUnit.MILLISECONDS.toNanos(2100);
    // A folder on another machine may show an old time for a while.
    private static final long LONGEST_TRUST_NANOS = TimeUnit.SECONDS.toNanos(10);
    // Tonight, and two that are compared.
    private static final int MOST_NIGHTS = 3;

    private final Supplier<Workbench> bench;
    private final LongSupplier nanoTime;
    private final ReentrantLock looking = new ReentrantLock();
    private final ReentrantLock working = new ReentrantLock();
    private final Map<NightId, Kept<List<LoggedEvent>>> nights = new LinkedHashMap<>(8, 0.75f, true);
    private NightState.ModelCache models = new NightState.ModelCache();
    private @Nullable Look last;
    private @Nullable AtMinute tonight;
    private @Nullable Kept<List<NightSummary>> summaries;
    private @Nullable Kept<List<Rig>> rigs;
    private @Nullable Kept<PierNights> pier;

    /** How a file looks from outside. */
    private record Stamp(Path file, Optional<Object> identity, long size, FileTime modified) {}

    /**
     * What was read, and when.
     *
     * @param firstSeen when the file first looked like this, {@link System#nanoTime}
     * @param readAt when SQLite was asked last, likewise
     */
    private record Look(Stamp stamp, long firstSeen, long readAt, Version version) {
        private boolean stillHolds(Stamp now, long nanos) {
            return stamp.equals(now) && readAt - firstSeen > COARSEST_NANOS && nanos - readAt < LONGEST_TRUST_NANOS;
        }
    }

    /** Which state of the log something was worked out from. */
    private record Version(Stamp stamp, NightSession.Standing standing, Optional<String> damage) {
        static Version of(Stamp stamp, NightLog log) {
            NightSession.Standing standing = new NightSession.Standing(
                    log.version(), log.latest().map(NightId::number).orElse(0L));
            return new Version(stamp, standing, log.damage());
        }

        Path file() {
            return stamp.file();
        }
    }

    private record Kept<T>(Version version, T value) {}

    private record AtMinute(Version version, Instant minute, NightSession.Tonight night) {}

    private record PierNights(Pier pier, LoggedNights nights) {}

    /**
     * A log that is opened when something is asked of it.
     *
     * @param bench names it; asked again each time, because every practice has its own
     */
    SessionLog(Supplier<Workbench> bench) {
        this(bench, System::nanoTime);
    }

    /** The same, with a {@link System#nanoTime} of one's own. */
    SessionLog(Supplier<Workbench> bench, LongSupplier nanoTime) {
        this.bench = bench;
        this.nanoTime = nanoTime;
    }

    /** How many events there are, and which night was begun last. */
    NightSession.Standing standing() {
        return version().map(Version::standing).orElse(new NightSession.Standing(0, 0));
    }

    private Optional<Version> version() {
        Path file = bench.get().defaultLog();
        looking.lock();
        try {
            Optional<Stamp> stamp = stamp(file);
            long now = nanoTime.getAsLong();
            if (stamp.isEmpty()) {
                last = null;
                return Optional.empty();
            }
            Look before = last;
            if (before == null || !before.stillHolds(stamp.get(), now)) {
                long firstSeen = before != null && before.stamp().equals(stamp.get()) ? before.firstSeen() : now;
                Version version = reading(file, log -> Version.of(stamp.get(), log));
                before = new Look(stamp.get(), firstSeen, now, version);
                last = before;
            }
            return Optional.of(before.version());
        } finally {
            looking.unlock();
        }
    }

    /** What is damaged of the file, if it is. */
    Optional<String> damage() {
        return version().flatMap(Version::damage);
    }

    private static Optional<Stamp> stamp(Path file) {
        try {
            BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
            return Optional.of(new Stamp(
                    file, Optional.ofNullable(attributes.fileKey()), attributes.size(), attributes.lastModifiedTime()));
        } catch (IOException notThere) {
            return Optional.empty();
        }
    }

    private static <T> T reading(Path file, Function<NightLog, T> question) {
        try (NightLog log = NightLog.open(file)) {
            return question.apply(log);
        }
    }

    /** The night that was begun last, as it stands this minute; empty as long as none was begun. */
    Optional<NightSession.Tonight> tonight() {
        return inTurn(version -> version.standing().night() == 0 ? Optional.empty() : Optional.of(tonight(version)));
    }

    private NightSession.Tonight tonight(Version version) {
        Instant now = bench.get().now();
        Instant minute = now.truncatedTo(ChronoUnit.MINUTES);
        AtMinute before = tonight;
        if (before != null
                && before.version().equals(version)
                && before.minute().equals(minute)) {
            return before.night();
        }
        NightId id = new NightId(version.standing().night());
        if (before == null || !before.night().id().equals(id)) {
            models = new NightState.ModelCache();
        }
        List<LoggedEvent> events = read(version, id);
        NightSession.Tonight night = new NightSession.Tonight(id, NightState.of(events, now, models), events);
        tonight = new AtMinute(version, minute, night);
        return night;
    }

    /** All nights, the latest first. */
    List<NightSummary> nights() {
        return inTurn(version -> {
                    if (summaries == null || !summaries.version().equals(version)) {
                        summaries = new Kept<>(version, reading(version.file(), NightLog::nights));
                    }
                    return Optional.of(summaries.value());
                })
                .orElse(List.of());
    }

    /** The rigs of its nights, each as it was last, the latest first. */
    List<Rig> rigs() {
        return inTurn(version -> {
                    if (rigs == null || !rigs.version().equals(version)) {
                        rigs = new Kept<>(version, reading(version.file(), LoggedRigs::of));
                    }
                    return Optional.of(rigs.value());
                })
                .orElse(List.of());
    }

    /**
     * All events of a night.
     *
     * @throws polewright.sky.InputRefused if there is no such night
     */
    List<LoggedEvent> events(NightId night) {
        return inTurn(version -> Optional.of(read(version, night))).orElse(List.of());
    }

    /** What a pier's nights came to. */
    LoggedNights nightsAt(Pier which) {
        return inTurn(version -> {
                    if (pier == null
                            || !pier.version().equals(version)
                            || !pier.value().pier().equals(which)) {
                        LoggedNights found = reading(version.file(), log -> LoggedNights.of(which, log));
                        pier = new Kept<>(version, new PierNights(which, found));
                    }
                    return Optional.of(pier.value().nights());
                })
                .orElseGet(() -> new LoggedNights(List.of(), List.of()));
    }

    /** A night's events are only ever added to, so that those which were read before need not be read again. */
    private List<LoggedEvent> read(Version version, NightId night) {
        Kept<List<LoggedEvent>> before = nights.get(night);
        if (before != null && before.version().equals(version)) {
            return before.value();
        }
        List<LoggedEvent> events = reading(
                version.file(), log -> before == null ? log.events(night) : extended(log, night, before.value()));
        nights.put(night, new Kept<>(version, events));
        if (nights.size() > MOST_NIGHTS) {
            nights.remove(nights.keySet().iterator().next());
        }
        return events;
    }

    private static List<LoggedEvent> extended(NightLog log, NightId night, List<LoggedEvent> known) {
        LoggedEvent lastKnown = known.get(known.size() - 1);
        List<LoggedEvent> since = log.events(night, lastKnown.seq());
        boolean isTheSameNight = !since.isEmpty()
                && since.get(0).equals(lastKnown)
                && log.event(night, 1).equals(Optional.of(known.get(0)));
        if (!isTheSameNight) {
            // Another log has taken the place of that one.
            return log.events(night);
        }
        return since.size() == 1
                ? known
                : Stream.concat(known.stream(), since.stream().skip(1)).toList();
    }

    /** One thread at a time works it out; the others wait for the result. Empty without a log. */
    private <T> Optional<T> inTurn(Function<Version, Optional<T>> work) {
        try {
            working.lockInterruptibly();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("the page is no longer wanted");
        }
        try {
            return version().flatMap(work);
        } finally {
            working.unlock();
        }
    }
}
