package polewright.operations.action;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import polewright.store.SubmissionKey;

/**
 * What is known when a night is begun.
 *
 * @param log the file of its log, which may not exist yet
 * @param now the time of entry
 * @param zone the computer's time zone
 * @param once identifies it, so that it can be sent again when its answer was lost
 * @param asksIfMistaken whether an odd site is asked about first; otherwise it is only remarked on
 * @param isConfirmed whether the person has confirmed a site that looks odd
 */
public record BeginningContext(
        Path log,
        Instant now,
        ZoneId zone,
        Optional<SubmissionKey> once,
        boolean asksIfMistaken,
        boolean isConfirmed) {}
