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
 * Looks into a folder again and again and hands out each frame once, when it is whole.
 *
 * <p>Looking is sturdier than being told: folders on another machine tell nothing. A file is whole when its size and time
 * have stayed as they were and its format says that nothing is missing. It is left alone for the pause of a writer in
 * bursts, unless it shows by itself that nobody writes to it any more: a name that is new, and no gap between its bytes.
 * Another file of the same name
 * is a new frame; the same bytes under another name are not, nor is a file that was there at the start and is renamed. Not
 * safe for use by several threads.
 */
public final class FrameFolder {
    // A capture program that writes in bursts pauses for less than this.
    private static final Duration STILL_FOR = Duration.ofMillis(300);
    // Two looks of a file without gaps; a writer that fills what was there before is never so slow between its writes.
    private static final Duration STILL_WITHOUT_GAPS = Duration.ofMillis(40);
    private static final Duration BETWEEN_LOOKS = Duration.ofMillis(200);
    private static final Duration BETWEEN_LOOKS_AT_THE_NEW = Duration.ofMillis(50);
    private static final Duration COMING_FOR = Duration.ofMillis(500);
    // What is more is for the next look: many large frames at once would fill the memory.
    private static final long MOST_BYTES_A_LOOK = 64L << 20;
    // A folder fills in a night; to look at each of a thousand old files five times a second would take a tenth of a
    // processor. A new file, and one that is renamed, changes the folder's own time.
    private static final int FEW_FILES = 50;
    private static final long LOOKS_TAKE_ONE_PART_OF = 300;
    private static final long COARSEST_NANOS = TimeUnit.MILLISECONDS.toNanos(2100);
    private static final int GAP_BYTES = 512;
    // FITS fills its last block with zeros (FITS Standard 4.0, 3.3.2): no gap.
    private static final int FILLED_UP_BYTES = 2880;
    private static final Duration PATIENCE = Duration.ofSeconds(10);

    private final Path folder;
    private final Clock clock;
    private final Map<Path, Seen> seen = new HashMap<>();
    private final Set<String> handedOut = new HashSet<>();
    private final Map<Path, Look> thereAtStart = new HashMap<>();
    private final List<Arrival> putBack = new ArrayList<>();
    private boolean missing;
    private FileTime folderModified = FileTime.fromMillis(0);
    private long folderModifiedSeen;
    private long restUntil;
    private boolean isLeftOff;

    /** How a file looked when it was last looked at. */
    private record Look(long size, Instant modified, Optional<Object> identity) {
        /** Some folders on other machines give a file another identity at every look. */
        private boolean isAs(Look other) {
            return size == other.size && modified.equals(other.modified);
        }

        private boolean isWrittenOver(Look before) {
            return identity.isEmpty() || identity.equals(before.identity);
        }
    }

    /** What is known of a file. */
    private static final class Seen {
        private final Look look;
        private final Instant since;
        /** Whether something that was a whole frame is written over: then what is there may be half of the old one. */
        private final boolean writtenOver;

        private boolean hasGaps;
        private boolean settled;
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
     * Watches a folder from now on.
     *
     * @param all whether frames that are there already count as new
     */
    public static FrameFolder of(Path folder, Clock clock, boolean all) {
        if (!Files.isDirectory(folder)) {
            throw new OperationFailed(folder + (Files.exists(folder) ? " is a file" : " is not there")
                    + ". Name the folder that your capture program saves to.");
        }
        FrameFolder watched = new FrameFolder(folder, clock);
        if (!all) {
            watched.passOverWhatIsThere();
        }
        return watched;
    }

    /** How many files were there at the start and are passed over. */
    public int passedOver() {
        return thereAtStart.size();
    }

    /** The folder. */
    public Path folder() {
        return folder;
    }

    /** The clock by which a file has been still for long enough. */
    Clock clock() {
        return clock;
    }

    /** How long to wait until the next look, if nothing wakes whoever looks. */
    public Duration untilNextLook() {
        Instant now = clock.instant();
        boolean coming = seen.values().stream()
                .anyMatch(file -> !file.settled && !file.complained && !file.isOlderThan(COMING_FOR, now));
        return coming ? BETWEEN_LOOKS_AT_THE_NEW : BETWEEN_LOOKS;
    }

    /**
     * One look: whole new frames by the time they were saved, and what else there is to tell. Of very many bytes at once the
     * rest comes with the next look.
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
        restUntil = ended + LOOKS_TAKE_ONE_PART_OF * (ended - begun);
        return arrivals;
    }

    /** Returns arrivals that were not processed; the next look hands them out again. */
    void putBack(Collection<Arrival> arrivals) {
        putBack.addAll(arrivals);
    }

    /** Whether nothing is new in a large folder, as far as its own time tells, and all of it was looked at lately. */
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
                && seen.values().stream().allMatch(file -> file.settled || file.complained);
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
            // Renamed or taken away this moment: the next look tells.
            return Optional.empty();
        }
        Instant now = clock.instant();
        Seen before = seen.get(file);
        if (before == null || !before.look.isAs(look)) {
            boolean over = before != null && (before.settled || before.writtenOver) && look.isWrittenOver(before.look);
            Seen fresh = new Seen(look, now, over);
            seen.put(file, fresh);
            if (before == null && isRenamedFromTheStart(file, look)) {
                fresh.settled = true;
                return Optional.of(new Arrival.PassedOver(file.getFileName() + " is an earlier file, renamed."));
            }
            return Optional.empty();
        }
        // What was complained of is read again when it changes, not at every look.
        boolean patient = before.writtenOver || before.hasGaps;
        if (before.settled || before.complained || !before.isOlderThan(patient ? STILL_FOR : STILL_WITHOUT_GAPS, now)) {
            return Optional.empty();
        }
        return settle(file, before, now);
    }

    /** A file keeps its size and time when it is renamed, and is then no longer under its old name. */
    private boolean isRenamedFromTheStart(Path file, Look look) {
        Optional<Path> old = thereAtStart.entrySet().stream()
                .filter(there -> there.getValue().isAs(look) && !stillLooks(there.getKey(), look))
                .map(Map.Entry::getKey)
                .findFirst();
        old.ifPresent(path -> {
            thereAtStart.remove(path);
            thereAtStart.put(file, look);
        });
        return old.isPresent();
    }

    private static boolean stillLooks(Path file, Look look) {
        try {
            return lookAt(file).isAs(look);
        } catch (IOException gone) {
            return false;
        }
    }

    private Optional<Arrival> settle(Path file, Seen known, Instant now) {
        FrameFile read;
        try {
            read = FrameFile.read(file);
        } catch (OperationFailed unreadable) {
            return complain(known, now, String.valueOf(unreadable.getMessage()));
        }
        FrameCompleteness whole;
        try {
            whole = FrameDecoding.completeness(read.content(), read.name(), DecodeLimits.OF_A_FILE);
        } catch (InputRefused endless) {
            known.settled = true;
            return Optional.of(new Arrival.PassedOver(String.valueOf(endless.getMessage())));
        }
        if (!known.isOlderThan(STILL_FOR, now)
                && (!(whole instanceof FrameCompleteness.Whole)
                        || hasGap(read.content())
                        || !stillLooks(file, known.look))) {
            known.hasGaps = true;
            return Optional.empty();
        }
        if (whole instanceof FrameCompleteness.CutShort) {
            return complain(known, now, read.name() + " is not complete yet; it is read once it is.");
        }
        if (whole instanceof FrameCompleteness.NotAFrame) {
            known.settled = true;
            return FrameNames.isFrame(file)
                    ? Optional.of(new Arrival.PassedOver(read.name() + " is not a supported image."))
                    : Optional.empty();
        }
        known.settled = true;
        if (!handedOut.add(digest(read.content()))) {
            return Optional.of(new Arrival.PassedOver(read.name() + " is the same frame as an earlier file."));
        }
        return Optional.of(new Arrival.Whole(read));
    }

    /** A stretch that nobody has written to reads as zeros: the length of a file may be set before its pixels are. */
    private static boolean hasGap(byte[] content) {
        byte[] nothing = new byte[GAP_BYTES];
        for (int at = 0; at + GAP_BYTES <= content.length - FILLED_UP_BYTES; at += GAP_BYTES) {
            if (Arrays.equals(content, at, at + GAP_BYTES, nothing, 0, GAP_BYTES)) {
                return true;
            }
        }
        return false;
    }

    /** Once, and only of what stays so for a while. */
    private static Optional<Arrival> complain(Seen known, Instant now, String line) {
        if (!known.isOlderThan(PATIENCE, now)) {
            return Optional.empty();
        }
        known.complained = true;
        return Optional.of(new Arrival.PassedOver(line));
    }

    private void passOverWhatIsThere() {
        try {
            for (Path file : files()) {
                Seen there = new Seen(lookAt(file), clock.instant(), false);
                there.settled = true;
                thereAtStart.put(file, there.look);
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
