package polewright.website;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The types of all modules by their simple names.
 *
 * @param folders the source folders of the modules
 * @param pages the page of each type, relative to the javadoc; types that share a name are left out
 */
record SourceTypes(List<Path> folders, Map<String, Path> pages) {
    private static final String JAVA = ".java";

    SourceTypes {
        folders = List.copyOf(folders);
        pages = Map.copyOf(pages);
    }

    static SourceTypes of(Path root) throws IOException {
        List<Path> folders;
        try (Stream<Path> modules = Files.list(root)) {
            folders = modules.map(module -> module.resolve("src/main/java"))
                    .filter(Files::isDirectory)
                    .sorted()
                    .toList();
        }
        Map<String, Path> pages = new HashMap<>();
        Set<String> shared = new HashSet<>();
        for (Path folder : folders) {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.filter(SourceTypes::isType).toList()) {
                    String name = file.getFileName().toString();
                    String type = name.substring(0, name.length() - JAVA.length());
                    if (pages.put(type, folder.relativize(file).resolveSibling(type + ".html")) != null) {
                        shared.add(type);
                    }
                }
            }
        }
        shared.forEach(pages::remove);
        return new SourceTypes(folders, pages);
    }

    private static boolean isType(Path file) {
        String name = file.getFileName().toString();
        return name.endsWith(JAVA) && !name.equals("package-info.java");
    }

    /** The page of a type, relative to the javadoc. */
    Optional<Path> page(String type) {
        return Optional.ofNullable(pages.get(type));
    }
}
