package polewright.website;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The documents of the repository, and where their pages are.
 *
 * @param root the folder of the repository
 * @param titles the documents, relative to it, with their titles
 */
record Documents(Path root, Map<Path, String> titles) {
    private static final String CONTENTS = "README.md";

    private static final String TITLE = "# ";

    Documents {
        titles = Collections.unmodifiableMap(new LinkedHashMap<>(titles));
    }

    /** The documents in the root, in {@code bench} and in {@code docs}. */
    static Documents of(Path root) throws IOException {
        List<Path> found = new ArrayList<>();
        for (String top : List.of("README.md", "CHANGELOG.md", "CONTRIBUTING.md", "bench/README.md")) {
            found.add(Path.of(top));
        }
        try (Stream<Path> below = Files.walk(root.resolve("docs"))) {
            below.filter(file -> file.toString().endsWith(".md"))
                    .map(root::relativize)
                    .sorted()
                    .forEach(found::add);
        }
        return of(root, found);
    }

    /** These documents alone. */
    static Documents of(Path root, List<Path> files) throws IOException {
        Map<Path, String> titles = new LinkedHashMap<>();
        for (Path file : files) {
            try (Stream<String> lines = Files.lines(root.resolve(file))) {
                titles.put(
                        file,
                        lines.filter(line -> line.startsWith(TITLE))
                                .map(line -> line.substring(TITLE.length()).strip())
                                .findFirst()
                                .orElse(file.toString()));
            }
        }
        return new Documents(root, titles);
    }

    Set<Path> files() {
        return titles.keySet();
    }

    String text(Path file) throws IOException {
        return Files.readString(root.resolve(file));
    }

    /** The page of a document, relative to the website. */
    static Path page(Path document) {
        String name = document.getFileName().toString();
        return document.resolveSibling(
                name.equals(CONTENTS) ? "index.html" : name.substring(0, name.length() - ".md".length()) + ".html");
    }
}
