package polewright.website;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The documents of the repository, and where their pages are.
 *
 * @param root the folder of the repository
 * @param files the documents, relative to it
 */
record Documents(Path root, List<Path> files) {
    private static final String CONTENTS = "README.md";

    Documents {
        files = List.copyOf(files);
    }

    /** Those at the top, of the benches, and below {@code docs}. */
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
        return new Documents(root, found);
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
