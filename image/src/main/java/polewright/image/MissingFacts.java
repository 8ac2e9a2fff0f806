package polewright.image;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.stream.Collectors;
import polewright.sky.InputRefused;

/** Facts without which the work cannot go on. */
public final class MissingFacts {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss");

    private MissingFacts() {}

    /**
     * What the person can do about a frame without a time, where the frame is asked for: imperatives without full stops.
     *
     * @param time for a file that says nothing of its time
     * @param zone for one that says the time by a clock of unknown zone
     */
    public record TimeRemedy(String time, String zone) {}

    /**
     * When the exposure was at its middle.
     *
     * @param name of the file, for the message
     * @throws InputRefused if the file says nothing of it, or only by a clock of unknown zone
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
