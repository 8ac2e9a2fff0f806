package polewright.operations;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import polewright.launcher.Main;
import polewright.report.json.PublishedSchemas;
import polewright.store.NightLog;

/** A user at a terminal, typing one command line after another, with a clock and a log of their own. */
public final class CommandRun {
    private static final ObjectMapper MAPPER =
            new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

    private final Path folder;
    private Instant now;

    /** The result of one command line. */
    public record Outcome(int status, String out, String err) {
        public JsonNode json() {
            try {
                return MAPPER.readTree(out);
            } catch (JsonProcessingException e) {
                throw new AssertionError("not one JSON value: " + out, e);
            }
        }

        public List<String> lines() {
            return out.lines().toList();
        }

        /** The error message, without the line that points to the help. */
        public String complaint() {
            return err.lines()
                    .filter(l -> !l.startsWith("Usage: "))
                    .reduce("", (a, b) -> a.isEmpty() ? b : a + "\n" + b);
        }
    }

    public CommandRun(Path folder, String now) {
        this.folder = folder;
        this.now = Instant.parse(now);
    }

    /** With a night begun at a site. */
    public static CommandRun begun(Path folder, String now, String site) {
        CommandRun person = new CommandRun(folder, now);
        person.good("begin", "--site", site);
        return person;
    }

    public Path log() {
        return folder.resolve("nights.sqlite");
    }

    public Path file(String name) {
        return folder.resolve(name);
    }

    public void waitMinutes(long minutes) {
        now = now.plus(Duration.ofMinutes(minutes));
    }

    /** Runs one command line. Its JSON output must conform to the published schema. */
    public Outcome run(String... typed) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Workbench bench = workbench(out, err);
        int status = Main.run(bench, typed);
        if (status == 0 && List.of(typed).contains("--json")) {
            PublishedSchemas.check(List.of(typed), out.toString());
        }
        return new Outcome(status, out.toString(), err.toString());
    }

    /** The same log and clock, to use without a command line. */
    public Workbench workbench() {
        return workbench(new StringWriter(), new StringWriter());
    }

    private Workbench workbench(StringWriter out, StringWriter err) {
        Map<String, String> environment = new HashMap<>();
        environment.put("POLEWRIGHT_LOG", log().toString());
        environment.put("XDG_DATA_HOME", folder.resolve("data").toString());
        return new Workbench(
                Clock.fixed(now, ZoneOffset.UTC),
                environment,
                new PrintWriter(out),
                new PrintWriter(err),
                false,
                Pause.REAL);
    }

    /** Runs a command that must succeed. */
    public Outcome good(String... typed) {
        Outcome outcome = run(typed);
        if (outcome.status() != 0 || !outcome.err().isEmpty()) {
            throw new AssertionError(String.join(" ", typed) + " gave " + outcome);
        }
        return outcome;
    }

    /** The number of events in the last night of the log. */
    public int events() {
        try (NightLog opened = NightLog.open(log())) {
            return opened.events(opened.latest().orElseThrow()).size();
        }
    }
}
