package polewright.website;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.commonmark.node.Node;

/** Builds the website. */
public final class Website {
    static final Path JAVADOC = Path.of("javadoc");
    static final Path STYLE = Path.of("website.css");
    private static final String JAVADOC_STYLE = "javadoc.css";

    private Website() {}

    /**
     * Builds the website and checks it; a fault ends it with status 1.
     *
     * @param args the folder of the repository, that of the website, and the class path of all modules; without the last,
     *     javadoc is left out
     */
    public static void main(String[] args) throws IOException {
        Path root = Path.of(args[0]).toAbsolutePath().normalize();
        Path site = Path.of(args[1]).toAbsolutePath().normalize();
        Set<String> faults = build(root, site, args.length > 2 ? Optional.of(args[2]) : Optional.empty());
        faults.forEach(System.err::println);
        System.out.println(
                faults.isEmpty() ? "Open " + site.resolve("index.html") : faults.size() + " links are wrong.");
        System.exit(faults.isEmpty() ? 0 : 1);
    }

    /**
     * Builds the website.
     *
     * @param classpath the libraries of all modules; without it, javadoc is left out
     * @return what is wrong with its links; empty if nothing is
     */
    static Set<String> build(Path root, Path site, Optional<String> classpath) throws IOException {
        Documents documents = Documents.of(root);
        Optional<SourceTypes> types = classpath.isPresent() ? Optional.of(SourceTypes.of(root)) : Optional.empty();
        Set<String> faults = new TreeSet<>();
        Set<Path> linkedFiles = new TreeSet<>();
        PageWriter writer = new PageWriter(menu(types.isPresent()));
        for (Path document : documents.files()) {
            Node parsed = PageWriter.parse(documents.text(document));
            PageLinks links = new PageLinks(documents, document, types);
            parsed.accept(links);
            linkedFiles.addAll(links.linkedFiles());
            faults.addAll(links.broken());
            Path page = Documents.page(document);
            Files.createDirectories(site.resolve(page).getParent());
            Files.writeString(site.resolve(page), writer.write(page, parsed));
        }
        for (Path file : linkedFiles) {
            Files.createDirectories(site.resolve(file).getParent());
            Files.copy(root.resolve(file), site.resolve(file), StandardCopyOption.REPLACE_EXISTING);
        }
        copyResource(STYLE.toString(), site.resolve(STYLE));
        if (types.isPresent() && classpath.isPresent()) {
            Path style = site.resolve(JAVADOC_STYLE);
            copyResource(JAVADOC_STYLE, style);
            Javadoc.write(types.get().folders(), classpath.get(), style, site.resolve(JAVADOC));
            Files.delete(style);
        }
        faults.addAll(LinkCheck.faults(site));
        return faults;
    }

    private static Map<String, Path> menu(boolean hasJavadoc) {
        Map<String, Path> menu = new LinkedHashMap<>();
        menu.put("Polewright", Path.of("index.html"));
        menu.put("Contents", Path.of("docs/index.html"));
        menu.put("Commands", Path.of("docs/reference.html"));
        menu.put("Design", Path.of("docs/design.html"));
        if (hasJavadoc) {
            menu.put("Javadoc", JAVADOC.resolve("index.html"));
        }
        return menu;
    }

    private static void copyResource(String name, Path to) throws IOException {
        try (InputStream resource = Objects.requireNonNull(Website.class.getResourceAsStream(name), name)) {
            Files.copy(resource, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
