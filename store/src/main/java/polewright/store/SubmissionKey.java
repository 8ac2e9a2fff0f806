package polewright.store;

import java.util.regex.Pattern;
import polewright.sky.InputRefused;

/**
 * Identifies one submission of a command: the same key sent again is the same command, already executed.
 *
 * @param text 8 to 64 letters, digits, hyphens or underscores, chosen at random by the sender
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
