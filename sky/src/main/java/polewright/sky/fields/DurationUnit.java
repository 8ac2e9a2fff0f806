package polewright.sky.fields;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Duration;

/** The unit of time that a key is or ends in, and exact decimal text for durations in it, to the nanosecond. */
enum DurationUnit {
    SECONDS("seconds", "_s", 1_000_000_000L),
    MINUTES("minutes", "_min", 60_000_000_000L);

    private static final int ENOUGH_FIGURES = 40;

    private final String word;
    private final String suffix;
    private final BigDecimal nanosEach;

    DurationUnit(String word, String suffix, long nanosEach) {
        this.word = word;
        this.suffix = suffix;
        this.nanosEach = BigDecimal.valueOf(nanosEach);
    }

    static DurationUnit ofKey(String key) {
        for (DurationUnit unit : values()) {
            if (key.equals(unit.word) || key.endsWith(unit.suffix)) {
                return unit;
            }
        }
        throw new IllegalArgumentException("key " + key + " does not end in a unit of time");
    }

    /** The plural. */
    String words() {
        return word;
    }

    Duration read(String digits) {
        return Duration.ofNanos(new BigDecimal(digits)
                .multiply(nanosEach)
                .setScale(0, RoundingMode.HALF_EVEN)
                .longValueExact());
    }

    /** The shortest decimal that reads back to the same nanosecond. */
    String write(Duration duration) {
        BigDecimal nanos = BigDecimal.valueOf(duration.toNanos());
        for (int figures = 1; figures <= ENOUGH_FIGURES; figures++) {
            String digits = Digits.of(nanos.divide(nanosEach, new MathContext(figures)));
            if (read(digits).equals(duration)) {
                return digits;
            }
        }
        throw new IllegalStateException("no decimal for " + duration);
    }
}
