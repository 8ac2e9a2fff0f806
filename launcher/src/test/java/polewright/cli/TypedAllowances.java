package polewright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;
import polewright.operations.CommandRun.Outcome;

/** Types commands in a night at Larkfell, each as one line with a bar for a space within a word. */
abstract class TypedAllowances {
    static final String LARKFELL = "54.60,-2.90,240";
    static final String TUSSOCK_FLAT = "-43.95,170.40,710";
    static final String CAMERA = " --focal-length 1200 --pixel 3.76 --size 4144x2822";

    @TempDir
    Path folder;

    CommandRun person;

    @BeforeEach
    void begin() {
        person = new CommandRun(folder, "2026-11-25T20:00:00Z");
        person.good("begin", "--site", LARKFELL, "--name", "Larkfell");
    }

    /** Splits a command line at spaces. A bar is a space within a word. */
    Outcome type(String typed) {
        return person.run(words(typed));
    }

    Outcome good(String typed) {
        return person.good(words(typed));
    }

    static String[] words(String typed) {
        return List.of(typed.split(" ", -1)).stream()
                .map(word -> word.replace('|', ' '))
                .toArray(String[]::new);
    }

    static String flat(Outcome outcome) {
        return outcome.out().replaceAll("\\s+", " ");
    }

    List<String> items() {
        List<String> names = new ArrayList<>();
        good("allow --json")
                .json()
                .path("work")
                .forEach(item -> names.add(item.get("name").textValue()));
        return names;
    }
}
