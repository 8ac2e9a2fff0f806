package polewright.operations.camera;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Detects headers that are ahead of the times at which their files were written: they contain local time, which is
 * taken for UTC.
 *
 * @param ahead a multiple of a quarter of an hour, as for time zones; negative if the headers are behind
 */
public record HeaderClock(Duration ahead) {
    private static final long STEP_SECONDS = 900;
    private static final long LEAST_SECONDS = 1800;
    // The easternmost time zone is UTC+14.
    private static final long MOST_SECONDS = 14 * 3600;
    // From the end of an exposure until its file is written (common practice: seconds; large frames over slow lines, a
    // minute).
    private static final long LATEST_SECONDS = 180;
    // The camera's clock may be ahead of the disk's.
    private static final long EARLIEST_SECONDS = -30;
    // Files saved one by one have similar delays. Files that were copied together do not.
    private static final long SAME_DELAY_SECONDS = 20;

    /**
     * The times of a frame and of its file.
     *
     * @param exposed end of its exposure, by its header
     * @param written when its file was last written
     */
    public record Saved(Instant exposed, Instant written) {
        /** For a frame with a recorded time; empty if its file is gone. */
        public static Optional<Saved> of(PlacedFrame frame) {
            Optional<Instant> end = frame.facts()
                    .middle()
                    .map(middle -> middle.plus(
                            frame.facts().exposure().orElse(Duration.ZERO).dividedBy(2)));
            try {
                Instant written = Files.getLastModifiedTime(frame.file()).toInstant();
                return end.map(exposed -> new Saved(exposed, written));
            } catch (IOException gone) {
                return Optional.empty();
            }
        }

        private long aheadSeconds() {
            return Duration.between(written, exposed).toSeconds();
        }
    }

    /**
     * Whether the headers of some frames are off by a possible zone offset.
     *
     * <p>A header cannot be ahead of its file. It may also be behind because the file was copied later: then two
     * frames are needed, with similar delays.
     */
    public static Optional<HeaderClock> of(List<Saved> frames) {
        if (frames.isEmpty()) {
            return Optional.empty();
        }
        long zone = Math.floorDiv(frames.get(0).aheadSeconds() + EARLIEST_SECONDS + STEP_SECONDS - 1, STEP_SECONDS)
                * STEP_SECONDS;
        List<Long> delays = new ArrayList<>();
        frames.forEach(frame -> delays.add(zone - frame.aheadSeconds()));
        long latest = delays.stream().mapToLong(d -> d).max().orElse(0);
        long earliest = delays.stream().mapToLong(d -> d).min().orElse(0);
        boolean isZoneOffset = Math.abs(zone) >= LEAST_SECONDS && Math.abs(zone) <= MOST_SECONDS;
        boolean savedAtOnce = earliest >= EARLIEST_SECONDS && latest <= LATEST_SECONDS;
        boolean savedOneByOne = savedSeparately(frames) && latest - earliest <= SAME_DELAY_SECONDS;
        return isZoneOffset && savedAtOnce && (zone > 0 || savedOneByOne)
                ? Optional.of(new HeaderClock(Duration.ofSeconds(zone)))
                : Optional.empty();
    }

    private static boolean savedSeparately(List<Saved> frames) {
        Instant first =
                frames.stream().map(Saved::exposed).min(Instant::compareTo).orElseThrow();
        Instant last =
                frames.stream().map(Saved::exposed).max(Instant::compareTo).orElseThrow();
        return Duration.between(first, last).toSeconds() > SAME_DELAY_SECONDS;
    }

    /** The zone that would correct it. */
    public ZoneOffset zone() {
        return ZoneOffset.ofTotalSeconds((int) ahead.toSeconds());
    }

    /** {@code 2 hours ahead of when their files were written}. */
    public String words() {
        double hours = Math.abs(ahead.toSeconds()) / 3600.0;
        String many = hours == Math.rint(hours) ? String.valueOf((long) hours) : String.valueOf(hours);
        return many + (hours == 1 ? " hour " : " hours ") + (ahead.isNegative() ? "behind" : "ahead of")
                + " the times their files were written";
    }
}
