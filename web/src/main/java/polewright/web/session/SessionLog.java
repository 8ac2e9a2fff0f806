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
 * A session's log as shared by all its pages: the file is opened only when it has changed, only new events are read,
 * and the results are computed once a minute for all requests. Thread-safe.
 *
 * <p>Size and modification time show whether the file has changed, which costs some microseconds. SQLite is queried
 * again only after they change, and for a while longer, because a file system's clock may be coarse. The file must not
 * be opened here other than through SQLite: closing it would release the locks that SQLite holds on it in this process.
 */
final class SessionLog {
    // The coarsest file-system clock in use is FAT's, with a resolution of two seconds.
    private static final long COARSEST_NANOS = TimeUnit.MILLISECONDS.toNanos(2100);
    // A network folder may report an old time for a while.
    private static final long LONGEST_TRUST_NANOS = TimeUnit.SECONDS.toNanos(10);
    // Tonight, and two nights being compared.
    private static final int MOST_NIGHTS = 3;

    private final Supplier<Workbench> bench;
    private final LongSupplier nanoTime;
    private final ReentrantLock lookLock = new ReentrantLock();
    private final ReentrantLock computeLock = new ReentrantLock();
    private final Map<NightId, Kept<List<LoggedEvent>>> nights = new LinkedHashMap<>(8, 0.75f, true);
    private NightState.ModelCache models = new NightState.ModelCache();
    private @Nullable Look last;
    private @Nullable AtMinute tonight;
    private @Nullable Kept<List<NightSummary>> summaries;
    private @Nullable Kept<List<Rig>> rigs;
    private @Nullable Kept<PierNights> pier;

    /** The file's identity, size and modification time. */
    private record Stamp(Path file, Optional<Object> identity, long size, FileTime modified) {}

    /**
     * A reading of the log and its times.
     *
     * @param firstSeen when the file was first seen with this stamp, {@link System#nanoTime}
     * @param readAt when SQLite was last queried, also {@link System#nanoTime}
     */
    private record Look(Stamp stamp, long firstSeen, long readAt, Version version) {
        private boolean isCurrent(Stamp now, long nanos) {
            return stamp.equals(now) && readAt - firstSeen > COARSEST_NANOS && nanos - readAt < LONGEST_TRUST_NANOS;
        }
    }

    /** The state of the log from which a result was computed. */
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
     * A log that is opened on demand.
     *
     * @param bench gives the log; looked up each time, because every practice has its own
     */
    SessionLog(Supplier<Workbench> bench) {
        this(bench, System::nanoTime);
    }

    /** The same with another {@link System#nanoTime}. */
    SessionLog(Supplier<Workbench> bench, LongSupplier nanoTime) {
        this.bench = bench;
        this.nanoTime = nanoTime;
    }

    /** The number of events, and the most recent night. */
    NightSession.Standing standing() {
        return version().map(Version::standing).orElse(new NightSession.Standing(0, 0));
    }

    private Optional<Version> version() {
        Path file = bench.get().defaultLog();
        lookLock.lock();
        try {
            Optional<Stamp> stamp = stamp(file);
            long now = nanoTime.getAsLong();
            if (stamp.isEmpty()) {
                last = null;
                return Optional.empty();
            }
            Look before = last;
            if (before == null || !before.isCurrent(stamp.get(), now)) {
                long firstSeen = before != null && before.stamp().equals(stamp.get()) ? before.firstSeen() : now;
                Version version = reading(file, log -> Version.of(stamp.get(), log));
                before = new Look(stamp.get(), firstSeen, now, version);
                last = before;
            }
            return Optional.of(before.version());
        } finally {
            lookLock.unlock();
        }
    }

    /** The damage to the file, if there is any. */
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

    private static <T> T reading(Path file, Function<NightLog, T> query) {
        try (NightLog log = NightLog.open(file)) {
            return query.apply(log);
        }
    }

    /** The most recent night in its current state; empty until a night has begun. */
    Optional<NightSession.Tonight> tonight() {
        return computeOnce(
                version -> version.standing().night() == 0 ? Optional.empty() : Optional.of(tonight(version)));
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
        return computeOnce(version -> {
                    if (summaries == null || !summaries.version().equals(version)) {
                        summaries = new Kept<>(version, reading(version.file(), NightLog::nights));
                    }
                    return Optional.of(summaries.value());
                })
                .orElse(List.of());
    }

    /** The rigs of its nights, each in its last state, the latest first. */
    List<Rig> rigs() {
        return computeOnce(version -> {
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
        return computeOnce(version -> Optional.of(read(version, night))).orElse(List.of());
    }

    /** The results of the nights at a pier. */
    LoggedNights nightsAt(Pier which) {
        return computeOnce(version -> {
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

    /** Events are only ever appended to a night, so those already read need not be read again. */
    private List<LoggedEvent> read(Version version, NightId night) {
        Kept<List<LoggedEvent>> before = nights.get(night);
        if (before != null && before.version().equals(version)) {
            return before.value();
        }
        List<LoggedEvent> events =
                reading(version.file(), log -> before == null ? log.events(night) : extend(log, night, before.value()));
        nights.put(night, new Kept<>(version, events));
        if (nights.size() > MOST_NIGHTS) {
            nights.remove(nights.keySet().iterator().next());
        }
        return events;
    }

    private static List<LoggedEvent> extend(NightLog log, NightId night, List<LoggedEvent> known) {
        LoggedEvent lastKnown = known.get(known.size() - 1);
        List<LoggedEvent> since = log.events(night, lastKnown.seq());
        boolean isTheSameNight = !since.isEmpty()
                && since.get(0).equals(lastKnown)
                && log.event(night, 1).equals(Optional.of(known.get(0)));
        if (!isTheSameNight) {
            // Another log has replaced that one.
            return log.events(night);
        }
        return since.size() == 1
                ? known
                : Stream.concat(known.stream(), since.stream().skip(1)).toList();
    }

    /** One thread at a time computes the result while the others wait for it. Empty without a log. */
    private <T> Optional<T> computeOnce(Function<Version, Optional<T>> work) {
        try {
            computeLock.lockInterruptibly();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("the page is no longer wanted");
        }
        try {
            return version().flatMap(work);
        } finally {
            computeLock.unlock();
        }
    }
}
