package polewright.store;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import polewright.session.NightId;
import polewright.session.RandomEvents;
import polewright.session.event.EventKind;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/**
 * A separate program that adds events to the latest night, and prints the number of each once it is in the log.
 *
 * <p>Arguments: file, mark for each note, number of events (0: until it is killed).
 */
public final class EndlessWriter {
    private EndlessWriter() {}

    public static void main(String[] arguments) {
        Path file = Path.of(arguments[0]);
        String mark = arguments[1];
        long most = Long.parseLong(arguments[2]);
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        out.println("started");
        try (NightLog log = NightLog.open(file)) {
            Optional<NightId> latest = log.latest();
            NightId night = latest.isPresent()
                    ? latest.get()
                    : log.begin((NightEvent.Begun) new RandomEvents(1).event(EventKind.BEGIN, 1), Instant.now());
            for (long i = 1; most == 0 || i <= most; i++) {
                LoggedEvent logged = log.append(night, new NightEvent.Noted(mark + " " + i), Instant.now());
                out.println(logged.seq() + " " + mark + " " + i);
            }
        }
    }

    /** Starts it with the class path of the calling test. */
    static Process start(Path file, String mark, int most) throws java.io.IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        EndlessWriter.class.getName(),
                        file.toString(),
                        mark,
                        String.valueOf(most))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }
}
