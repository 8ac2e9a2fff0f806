package polewright.web.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * The pairing code shown in the terminal: eight characters, valid for one device, ten minutes and a few typing
 * errors.
 */
public final class PairingCode {
    /** How long a code may be used. */
    public static final Duration LIFE = Duration.ofMinutes(10);

    private static final String ALPHABET = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";
    private static final int LENGTH = 8;
    private static final int WRONG_TRIES = 5;
    private static final Duration FIRST_WAIT = Duration.ofSeconds(1);

    private final Clock clock;
    private final String code;
    private final Instant shown;
    private final Map<String, Slip> slips = new HashMap<>();
    private int wrong;
    private boolean isUsed;

    private PairingCode(Clock clock, String code) {
        this.clock = clock;
        this.code = code;
        shown = clock.instant();
    }

    private record Slip(int count, Instant until) {}

    /** The result of a guess. */
    public enum Answer {
        RIGHT,
        WRONG,
        TOO_SOON,
        VOID
    }

    public static PairingCode fresh(Clock clock) {
        return drawn(clock, new SecureRandom());
    }

    static PairingCode drawn(Clock clock, Random random) {
        StringBuilder code = new StringBuilder();
        for (int i = 0; i < LENGTH; i++) {
            code.append(ALPHABET.charAt(random.nextInt(ALPHABET.length())));
        }
        return new PairingCode(clock, code.toString());
    }

    /** For reading aloud: four characters, a hyphen, four characters. */
    public String grouped() {
        return code.substring(0, LENGTH / 2) + "-" + code.substring(LENGTH / 2);
    }

    /** Whether it has been used, was guessed at too often, or has expired. */
    public synchronized boolean isVoid() {
        return isUsed || wrong >= WRONG_TRIES || !clock.instant().isBefore(shown.plus(LIFE));
    }

    /** Whether it was guessed at too often. */
    public synchronized boolean isExhausted() {
        return wrong >= WRONG_TRIES;
    }

    /** Checks one guess from an address. */
    public synchronized Answer guess(String typed, String address) {
        if (isVoid()) {
            return Answer.VOID;
        }
        Instant now = clock.instant();
        Slip before = slips.getOrDefault(address, new Slip(0, Instant.MIN));
        if (now.isBefore(before.until())) {
            return Answer.TOO_SOON;
        }
        byte[] bare = typed.toUpperCase(Locale.ROOT).replaceAll("[\\s-]", "").getBytes(StandardCharsets.UTF_8);
        if (MessageDigest.isEqual(bare, code.getBytes(StandardCharsets.UTF_8))) {
            isUsed = true;
            return Answer.RIGHT;
        }
        wrong++;
        slips.put(address, new Slip(before.count() + 1, now.plus(FIRST_WAIT.multipliedBy(1L << before.count()))));
        return isVoid() ? Answer.VOID : Answer.WRONG;
    }
}
