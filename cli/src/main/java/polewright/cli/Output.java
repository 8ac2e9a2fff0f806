package polewright.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import picocli.CommandLine.Option;
import polewright.operations.Workbench;

/** Prints results as text or as JSON. */
final class Output extends TerminalOutput {
    /** Loaded on first use: most commands do not need it, and loading takes a tenth of a second. */
    private static final class Json {
        private static final ObjectMapper MAPPER = new ObjectMapper();
    }

    @Option(names = "--json", description = "Print the result as JSON.")
    private boolean json;

    boolean isJson() {
        return json;
    }

    /** A line in addition to the result: omitted with JSON, which must be alone. */
    void mention(Workbench workbench, String line) {
        if (!json) {
            say(workbench, line);
        }
    }

    void print(Workbench workbench, JsonNode node) {
        workbench.out().println(text(node));
        workbench.out().flush();
    }

    /** One array, one element per line, so that a night can be read line by line as well as whole. */
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
