package polewright.operations.watch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import polewright.image.decode.DecodeLimits;
import polewright.image.decode.FrameCompleteness;
import polewright.operations.OperationFailed;
import polewright.operations.camera.FrameDecoding;
import polewright.operations.camera.FrameFile;
import polewright.sky.InputRefused;

/**
 * Polls a folder and returns each frame once, when it is complete.
 *
 * <p>Polling is more reliable than notification: network folders report nothing. A file is complete when its size and
 * time have not changed and its format shows that nothing is missing. It is left alone for the pause of a program that
 * writes in bursts, unless it is evidently finished: a new name, and no gap between its bytes. Another file of the
 * same name is a new frame; the same bytes under another name are not, nor is a file that existed at the start and is
 * renamed. Not thread-safe.
 */
public final class FrameFolder {
    // A capture program that writes in bursts pauses for less than this.
    private static final Duration STILL_FOR = Duration.ofMillis(300);
    // Two looks at a file without gaps; a program that overwrites an existing file never pauses this long between its
    // writes.
    private static final Duration STILL_WITHOUT_GAPS = Duration.ofMillis(40);
    private static final Duration BETWEEN_LOOKS = Duration.ofMillis(200);
    private static final Duration BETWEEN_LOOKS_WHILE_WRITING = Duration.ofMillis(50);
    private static final Duration WRITING_TIME = Duration.ofMillis(500);
    // The rest waits for the next look: many large frames at once would fill the memory.
    private static final long MOST_BYTES_A_LOOK = 64L << 20;
    // A folder fills up in a night; looking at each of a thousand old files five times a second would take a tenth of
    // a processor. A new or renamed file changes the folder's own time.
    private static final int FEW_FILES = 50;
    private static final long REST_PER_LOOK_TIME = 300;
    private static final long COARSEST_NANOS = TimeUnit.MILLISECONDS.toNanos(2100);
    private static final int GAP_BYTES = 512;
    // FITS pads its last block with zeros (FITS Standard 4.0, 3.3.2): no gap.
    private static final int FILLED_UP_BYTES = 2880;
    private static final Duration PATIENCE = Duration.ofSeconds(10);

    private final Path folder;
    private final Clock clock;
    private final Map<Path, Seen> seen = new HashMap<>();
    private final Set<String> returnedDigests = new HashSet<>();
    private final Map<Path, Look> presentAtStart = new HashMap<>();
    private final List<Arrival> putBack = new ArrayList<>();
    private boolean missing;
    private FileTime folderModified = FileTime.fromMillis(0);
    private long folderModifiedSeen;
    private long restUntil;
    private boolean isLeftOff;

    /** A file's size, time and identity at the last look. */
    private record Look(long size, Instant modified, Optional<Object> identity) {
        /** Some network folders give a file another identity at every look. */
        private boolean matches(Look other) {
            return size == other.size && modified.equals(other.modified);
        }

        private boolean isWrittenOver(Look before) {
            return identity.isEmpty() || identity.equals(before.identity);
        }
    }

    /** What is known about a file. */
    private static final class Seen {
        private final Look look;
        private final Instant since;
        /** Whether a complete frame is being overwritten: then the content may be half of the old one. */
        private final boolean writtenOver;

        private boolean hasGaps;
        private boolean isSettled;
        private boolean complained;

        private Seen(Look look, Instant since, boolean writtenOver) {
            this.look = look;
            this.since = since;
            this.writtenOver = writtenOver;
        }

        private boolean isOlderThan(Duration age, Instant now) {
            return Duration.between(since, now).compareTo(age) >= 0;
        }
    }

    private FrameFolder(Path folder, Clock clock) {
        this.folder = folder;
        this.clock = clock;
    }

    /**
     * Starts watching a folder.
     *
     * @param all whether frames that are already there count as new
     */
    public static FrameFolder of(Path folder, Clock clock, boolean all) {
        if (!Files.isDirectory(folder)) {
            throw new OperationFailed(folder + (Files.exists(folder) ? " is a file" : " does not exist")
                    + ". Name the folder that your capture program saves to.");
        }
        FrameFolder watched = new FrameFolder(folder, clock);
        if (!all) {
            watched.skipExisting();
        }
        return watched;
    }

    /** The number of files present at the start, which are ignored. */
    public int passedOver() {
        return presentAtStart.size();
    }

    /** The folder. */
    public Path folder() {
        return folder;
    }

    /** The clock that decides whether a file has been unchanged for long enough. */
    Clock clock() {
        return clock;
    }

    /** How long to wait until the next look, if nothing wakes the watch. */
    public Duration untilNextLook() {
        Instant now = clock.instant();
        boolean coming = seen.values().stream()
                .anyMatch(file -> !file.isSettled && !file.complained && !file.isOlderThan(WRITING_TIME, now));
        return coming ? BETWEEN_LOOKS_WHILE_WRITING : BETWEEN_LOOKS;
    }

    /**
     * One look: complete new frames in the order they were saved, and what else there is to report. Beyond a limit of
     * bytes, the rest comes with the next look.
     */
    public List<Arrival> look() {
        if (!putBack.isEmpty()) {
            List<Arrival> again = List.copyOf(putBack);
            putBack.clear();
            return again;
        }
        long begun = System.nanoTime();
        if (mayRest(begun)) {
            return List.of();
        }
        List<Arrival> arrivals = lookAtAll();
        long ended = System.nanoTime();
        restUntil = ended + REST_PER_LOOK_TIME * (ended - begun);
        return arrivals;
    }

    /** Returns arrivals that were not processed; the next look returns them again. */
    void putBack(Collection<Arrival> arrivals) {
        putBack.addAll(arrivals);
    }

    /** Whether a large folder is unchanged by its own time, and all of it was looked at recently. */
    private boolean mayRest(long now) {
        FileTime modified;
        try {
            modified = Files.getLastModifiedTime(folder);
        } catch (IOException gone) {
            return false;
        }
        if (!modified.equals(folderModified)) {
            folderModified = modified;
            folderModifiedSeen = now;
        }
        return seen.size() > FEW_FILES
                && !isLeftOff
                && now < restUntil
                && now - folderModifiedSeen > COARSEST_NANOS
                && seen.values().stream().allMatch(file -> file.isSettled || file.complained);
    }

    private List<Arrival> lookAtAll() {
        List<Path> files;
        try {
            files = files();
        } catch (IOException | UncheckedIOException e) {
            return missingFolder();
        }
        missing = false;
        seen.keySet().retainAll(Set.copyOf(files));
        List<Arrival> arrivals = new ArrayList<>();
        isLeftOff = false;
        long bytes = 0;
        for (Path file : files) {
            Optional<Arrival> arrival = look(file);
            arrival.ifPresent(arrivals::add);
            if (arrival.isPresent() && arrival.get() instanceof Arrival.Whole whole) {
                bytes += whole.file().content().length;
            }
            if (bytes >= MOST_BYTES_A_LOOK) {
                isLeftOff = true;
                break;
            }
        }
        return arrivals;
    }

    private List<Arrival> missingFolder() {
        if (missing) {
            return List.of();
        }
        missing = true;
        return List.of(new Arrival.PassedOver(folder + " cannot be read now; trying again."));
    }

    private Optional<Arrival> look(Path file) {
        Look look;
        try {
            look = lookAt(file);
        } catch (IOException e) {
            // Renamed or removed at this moment: the next look decides.
            return Optional.empty();
        }
        Instant now = clock.instant();
        Seen before = seen.get(file);
        if (before == null || !before.look.matches(look)) {
            boolean over =
                    before != null && (before.isSettled || before.writtenOver) && look.isWrittenOver(before.look);
            Seen fresh = new Seen(look, now, over);
            seen.put(file, fresh);
            if (before == null && isRenamedFromTheStart(file, look)) {
                fresh.isSettled = true;
                return Optional.of(new Arrival.PassedOver(file.getFileName() + " is an earlier file, renamed."));
            }
            return Optional.empty();
        }
        // A file that was complained about is read again only when it changes.
        boolean patient = before.writtenOver || before.hasGaps;
        if (before.isSettled
                || before.complained
                || !before.isOlderThan(patient ? STILL_FOR : STILL_WITHOUT_GAPS, now)) {
            return Optional.empty();
        }
        return deliver(file, before, now);
    }

    /** A renamed file keeps its size and time, and its old name is gone. */
    private boolean isRenamedFromTheStart(Path file, Look look) {
        Optional<Path> old = presentAtStart.entrySet().stream()
                .filter(there -> there.getValue().matches(look) && !isUnchanged(there.getKey(), look))
                .map(Map.Entry::getKey)
                .findFirst();
        old.ifPresent(path -> {
            presentAtStart.remove(path);
            presentAtStart.put(file, look);
        });
        return old.isPresent();
    }

    private static boolean isUnchanged(Path file, Look look) {
        try {
            return lookAt(file).matches(look);
        } catch (IOException gone) {
            return false;
        }
    }

    private Optional<Arrival> deliver(Path file, Seen known, Instant now) {
        FrameFile read;
        try {
            read = FrameFile.read(file);
        } catch (OperationFailed unreadable) {
            return reportProblem(known, now, String.valueOf(unreadable.getMessage()));
        }
        FrameCompleteness whole;
        try {
            whole = FrameDecoding.completeness(read.content(), read.name(), DecodeLimits.OF_A_FILE);
        } catch (InputRefused endless) {
            known.isSettled = true;
            return Optional.of(new Arrival.PassedOver(String.valueOf(endless.getMessage())));
        }
        if (!known.isOlderThan(STILL_FOR, now)
                && (!(whole instanceof FrameCompleteness.Whole)
                        || hasGap(read.content())
                        || !isUnchanged(file, known.look))) {
            known.hasGaps = true;
            return Optional.empty();
        }
        if (whole instanceof FrameCompleteness.CutShort) {
            return reportProblem(known, now, read.name() + " is not complete yet; it is read once it is.");
        }
        if (whole instanceof FrameCompleteness.NotAFrame) {
            known.isSettled = true;
            return FrameNames.isFrame(file)
                    ? Optional.of(new Arrival.PassedOver(read.name() + " is not a supported image."))
                    : Optional.empty();
        }
        known.isSettled = true;
        if (!returnedDigests.add(digest(read.content()))) {
            return Optional.of(new Arrival.PassedOver(read.name() + " is the same frame as an earlier file."));
        }
        return Optional.of(new Arrival.Whole(read));
    }

    /** An unwritten part reads as zeros: the length of a file may be set before its pixels are. */
    private static boolean hasGap(byte[] content) {
        byte[] nothing = new byte[GAP_BYTES];
        for (int at = 0; at + GAP_BYTES <= content.length - FILLED_UP_BYTES; at += GAP_BYTES) {
            if (Arrays.equals(content, at, at + GAP_BYTES, nothing, 0, GAP_BYTES)) {
                return true;
            }
        }
        return false;
    }

    /** Once per file, and only if the problem lasts. */
    private static Optional<Arrival> reportProblem(Seen known, Instant now, String line) {
        if (!known.isOlderThan(PATIENCE, now)) {
            return Optional.empty();
        }
        known.complained = true;
        return Optional.of(new Arrival.PassedOver(line));
    }

    private void skipExisting() {
        try {
            for (Path file : files()) {
                Seen there = new Seen(lookAt(file), clock.instant(), false);
                there.isSettled = true;
                presentAtStart.put(file, there.look);
                seen.put(file, there);
            }
        } catch (IOException | UncheckedIOException e) {
            throw new OperationFailed(folder + " cannot be read. Name a folder that you may read.");
        }
    }

    /** In the order they were saved. */
    private List<Path> files() throws IOException {
        record Saved(Path file, Instant at) {}
        List<Saved> saved = new ArrayList<>();
        try (Stream<Path> listed = Files.list(folder)) {
            for (Path file : listed.filter(FrameNames::mayBeFrame).toList()) {
                if (Files.isRegularFile(file)) {
                    saved.add(new Saved(file, Files.getLastModifiedTime(file).toInstant()));
                }
            }
        }
        saved.sort(Comparator.comparing(Saved::at).thenComparing(s -> s.file().toString()));
        return saved.stream().map(Saved::file).toList();
    }

    private static Look lookAt(Path file) throws IOException {
        BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
        return new Look(
                attributes.size(),
                attributes.lastModifiedTime().toInstant(),
                Optional.ofNullable(attributes.fileKey()));
    }

    private static String digest(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
