package polewright.image;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.stream.Collectors;
import polewright.sky.InputRefused;

/** Metadata that later steps require. */
public final class MissingFacts {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss");

    private MissingFacts() {}

    /**
     * What the user can do about a frame without a time, in the place where frames are requested: imperatives without
     * full stops.
     *
     * @param time for a file without a time
     * @param zone for a file whose time is in an unknown zone
     */
    public record TimeRemedy(String time, String zone) {}

    /**
     * The middle of the exposure.
     *
     * @param name of the file, for the message
     * @throws InputRefused if the file does not give it, or only in an unknown time zone
     */
    public static Instant middle(String name, FrameFacts facts, TimeRemedy remedy) {
        return facts.middle()
                .orElseThrow(() -> facts.localMiddle()
                        .map(local -> new InputRefused(
                                name + " gives the time by the camera's clock (" + CLOCK.format(local)
                                        + ") but not its zone",
                                remedy.zone()))
                        .orElseGet(() -> new InputRefused(
                                name + " does not say when it was taken" + reasons(facts), remedy.time())));
    }

    private static String reasons(FrameFacts facts) {
        return facts.remarks().isEmpty() ? "" : facts.remarks().stream().collect(Collectors.joining("; ", " (", ")"));
    }
}
