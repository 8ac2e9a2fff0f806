package polewright.app.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import picocli.CommandLine.Option;
import polewright.app.Workbench;
import polewright.app.text.Wrapping;

/** How results are shown. */
final class Output {
    /** Loaded when it is first asked for: most commands are not, and it takes a tenth of a second. */
    private static final class Json {
        private static final ObjectMapper MAPPER = new ObjectMapper();
    }

    // Faint and red: the least harm to eyes that are used to the dark.
    private static final String DIM_RED = "\u001b[2;31m";
    private static final String PLAIN = "\u001b[0m";
    private static final String CLEAR_LINE = "\u001b[2K";

    @Option(names = "--json", description = "Print the result as JSON.")
    private boolean json;

    @Option(names = "--red", description = "Print in dim red, for eyes used to the dark.")
    private boolean red;

    boolean isJson() {
        return json;
    }

    static boolean wantsRed(String... args) {
        return List.of(args).contains("--red");
    }

    static String reddened(String line) {
        return line.isEmpty() ? line : DIM_RED + line + PLAIN;
    }

    /** Lines for people, broken to fit a screen. */
    void say(Workbench workbench, List<String> lines) {
        for (String line : Wrapping.wrapped(lines)) {
            workbench.out().println(red ? reddened(line) : line);
        }
        workbench.out().flush();
    }

    /** Lines that are a picture: shown as they are. */
    void show(Workbench workbench, List<String> lines) {
        lines.forEach(line -> workbench.out().println(red ? reddened(line) : line));
        workbench.out().flush();
    }

    void say(Workbench workbench, String line) {
        say(workbench, List.of(line));
    }

    /** Over the line that is there, without ending it: for a terminal. */
    void overwrite(Workbench workbench, String line) {
        workbench.out().print("\r" + CLEAR_LINE + (red ? reddened(line) : line));
        workbench.out().flush();
    }

    /** A line beside the result: not with JSON, which stands alone. */
    void mention(Workbench workbench, String line) {
        if (!json) {
            say(workbench, line);
        }
    }

    void print(Workbench workbench, JsonNode node) {
        workbench.out().println(text(node));
        workbench.out().flush();
    }

    /** One array, an element a line, so that a night can be read by line as well as whole. */
    void print(Workbench workbench, List<? extends JsonNode> nodes) {
        printTexts(workbench, nodes.stream().map(Output::text).toList());
    }

    /** The same for elements that are JSON text already. */
    void printTexts(Workbench workbench, List<String> elements) {
        workbench.out().println("[");
        for (int i = 0; i < elements.size(); i++) {
            workbench.out().println(elements.get(i) + (i + 1 < elements.size() ? "," : ""));
        }
        workbench.out().println("]");
        workbench.out().flush();
    }

    private static String text(JsonNode node) {
        try {
            return Json.MAPPER.writeValueAsString(node);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of plain values did not print", e);
        }
    }
}
