package polewright.store;

import java.util.regex.Pattern;
import polewright.sky.InputRefused;

/**
 * What tells one sending of a command from another: the same key sent again is the same command, already done.
 *
 * @param text 8 to 64 letters, digits, hyphens or underscores, chosen at random by whoever sends
 */
public record SubmissionKey(String text) {
    private static final Pattern USABLE = Pattern.compile("[A-Za-z0-9_-]{8,64}");

    public SubmissionKey {
        if (!USABLE.matcher(text).matches()) {
            throw new InputRefused(
                    "the submission key is not 8 to 64 letters, digits, hyphens or underscores",
                    "choose another at random");
        }
    }
}
