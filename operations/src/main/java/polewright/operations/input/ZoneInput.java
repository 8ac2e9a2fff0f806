package polewright.operations.input;

import java.time.DateTimeException;
import java.time.ZoneOffset;
import picocli.CommandLine.ITypeConverter;
import polewright.sky.InputRefused;

/** The zone of a camera's clock: {@code Z} or {@code +01:00}. */
public final class ZoneInput implements ITypeConverter<ZoneOffset> {
    @Override
    public ZoneOffset convert(String typed) {
        try {
            return ZoneOffset.of(typed.strip());
        } catch (DateTimeException e) {
            throw new InputRefused(
                    "'" + typed + "' is not a time zone", "write Z for UTC, or an offset such as +01:00 or -05:00");
        }
    }
}
