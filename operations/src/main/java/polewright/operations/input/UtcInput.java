package polewright.operations.input;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;
import polewright.sky.time.SkyTime;

/** An instant with its zone: {@code 2026-11-25T20:00Z} or {@code 2026-11-25T21:00+01:00}. */
public final class UtcInput implements ITypeConverter<Instant> {
    private static final Pattern WITHOUT_ZONE =
            Pattern.compile("\\d{4}-\\d{2}-\\d{2}([T ]\\d{2}:\\d{2}(:\\d{2}(\\.\\d+)?)?)?");

    @Override
    public Instant convert(String typed) {
        return parse(typed);
    }

    public static Instant parse(String typed) {
        String text = typed.strip();
        try {
            // Refused here, so that every command gives the same answer for a year that no table covers.
            return SkyTime.of(OffsetDateTime.parse(text.replace(' ', 'T')).toInstant())
                    .utc();
        } catch (DateTimeParseException e) {
            if (WITHOUT_ZONE.matcher(text).matches()) {
                throw new InputRefused(
                        "the time '" + text + "' has no time zone",
                        text.length() > 10
                                ? "add Z if it is UTC (" + text.replace(' ', 'T') + "Z), or your offset, such as +01:00"
                                : "give the time of day and Z for UTC, such as " + text + "T20:00Z");
            }
            throw new InputRefused(
                    "'" + text + "' is not a time", "write it like 2026-11-25T20:00Z (UTC) or 2026-11-25T21:00+01:00");
        }
    }
}
