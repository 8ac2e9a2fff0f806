package polewright.website;

import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;

/** The javadoc of all modules together, by the tool of the JDK. */
final class Javadoc {
    private Javadoc() {}

    /**
     * Writes the pages. Types that are not public have pages too: the documents name them.
     *
     * @param classpath the libraries of all modules
     * @param style added to the tool's own style, which has light colours only
     * @throws IllegalStateException if the tool reports an error
     */
    static void write(List<Path> sources, String classpath, Path style, Path folder) throws IOException {
        ToolProvider javadoc = ToolProvider.findFirst("javadoc")
                .orElseThrow(() -> new IllegalStateException(
                        "this Java has no javadoc tool. Run it with a JDK: openjdk-17-jdk-headless on Debian."));
        StringWriter messages = new StringWriter();
        PrintWriter out = new PrintWriter(messages);
        int status = javadoc.run(
                out,
                out,
                "-d",
                folder.toString(),
                "-quiet",
                "-package",
                "-notimestamp",
                "-Xdoclint:none",
                "-encoding",
                "UTF-8",
                "-charset",
                "UTF-8",
                "-windowtitle",
                "Polewright",
                "-doctitle",
                "Polewright: the packages of all modules",
                "-top",
                "<a href=\"{@docRoot}/../docs/design.html\">The design</a>",
                "--add-stylesheet",
                style.toString(),
                "-classpath",
                classpath,
                "-sourcepath",
                sources.stream().map(Path::toString).collect(Collectors.joining(File.pathSeparator)),
                "-subpackages",
                "polewright");
        if (status != 0) {
            throw new IllegalStateException("javadoc failed:\n" + messages);
        }
        addAnchors(folder.resolve("constant-values.html"));
        leaveOutMissingFonts(folder);
    }

    /** Debian's tool comes without the fonts that its style imports. */
    private static void leaveOutMissingFonts(Path folder) throws IOException {
        if (!Files.exists(folder.resolve("resources/fonts/dejavu.css"))) {
            Path style = folder.resolve("stylesheet.css");
            String text = Files.readString(style);
            Files.writeString(style, text.replaceAll("@import url\\('resources/fonts/dejavu.css'\\);", ""));
        }
    }

    /** The tool links to the groups of constants, but forgets their anchors. */
    private static void addAnchors(Path page) throws IOException {
        String text = Files.readString(page);
        Files.writeString(page, text.replaceAll("<h2 title=\"([\\w.]+)\">", "<h2 title=\"$1\" id=\"$1\">"));
    }
}
