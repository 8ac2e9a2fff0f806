package polewright.sky.time;

import java.time.Instant;
import java.util.Optional;

/**
 * How far the library's leap-second table can be trusted.
 *
 * <p>The library silently returns 37 s for every later date, so this class reports when that is only a guess.
 *
 * <p><b>A table that ages.</b> Valid until: 2027-06-28. Source: expiry line of {@code leap-seconds.list} (IERS), as
 * distributed in the Debian package {@code tzdata} 2026f, whose last entry is still TAI−UTC = 37 s from 2017-01-01.
 * When a new list is published without a new leap second, move {@link #CHECKED_UNTIL}; with one, update the JSOFA
 * library as well.
 */
public final class LeapSeconds {
    /** Before this instant no leap second has been announced beyond those in the library. */
    public static final Instant CHECKED_UNTIL = Instant.parse("2027-06-28T00:00:00Z");

    private LeapSeconds() {}

    /** A note for the person when {@code utc} is beyond the table, else empty. */
    public static Optional<String> note(Instant utc) {
        if (!utc.isAfter(CHECKED_UNTIL)) {
            return Optional.empty();
        }
        return Optional.of("Leap seconds are known to 2027-06-28 only; TAI-UTC is taken as 37 s. Each one added since"
                + " would shift the Moon by half an arcsecond and stars by nothing visible.");
    }
}
