package polewright.website;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Text;

/**
 * Turns the links of one document into links of its page: documents into pages, their file names into their titles, and names
 * of types into links to their javadoc. Collects the other files that are linked.
 */
final class PageLinks extends AbstractVisitor {
    private static final Pattern OTHER_ORIGIN = Pattern.compile("[a-z][a-z0-9+.-]*:.*");

    private final Documents documents;
    private final Path document;
    private final Optional<SourceTypes> types;
    private final Set<Path> linkedFiles = new TreeSet<>();
    private final Set<String> broken = new TreeSet<>();

    /**
     * The links of one document.
     *
     * @param types the types that have javadoc; empty if none is built
     */
    PageLinks(Documents documents, Path document, Optional<SourceTypes> types) {
        this.documents = documents;
        this.document = document;
        this.types = types;
    }

    /** The files that are linked and are not documents, relative to the repository. */
    Set<Path> linkedFiles() {
        return Set.copyOf(linkedFiles);
    }

    /** Links to files that do not exist, each with its document. */
    Set<String> broken() {
        return Set.copyOf(broken);
    }

    @Override
    public void visit(Link link) {
        if (link.getFirstChild() instanceof Text text && text.getLiteral().endsWith(".md")) {
            Path target = document.resolveSibling(link.getDestination()).normalize();
            text.setLiteral(documents.titles().getOrDefault(target, text.getLiteral()));
        }
        link.setDestination(converted(link.getDestination()));
    }

    @Override
    public void visit(Image image) {
        image.setDestination(converted(image.getDestination()));
        visitChildren(image);
    }

    @Override
    public void visit(Code code) {
        types.flatMap(known -> known.page(code.getLiteral())).ifPresent(page -> {
            Path from = Documents.page(document);
            Node link = new Link(relative(from, Website.JAVADOC.resolve(page)), code.getLiteral());
            code.insertBefore(link);
            link.appendChild(code);
        });
    }

    private String converted(String destination) {
        if (destination.startsWith("#") || OTHER_ORIGIN.matcher(destination).matches()) {
            return destination;
        }
        int hash = destination.indexOf('#');
        String named = hash < 0 ? destination : destination.substring(0, hash);
        String fragment = hash < 0 ? "" : destination.substring(hash);
        Path target = document.resolveSibling(named).normalize();
        if (documents.files().contains(target)) {
            return relative(Documents.page(document), Documents.page(target)) + fragment;
        }
        if (target.startsWith("..") || !Files.isRegularFile(documents.root().resolve(target))) {
            broken.add(document + " links to " + destination);
        } else {
            linkedFiles.add(target);
        }
        return destination;
    }

    /** The address of one page as a link on another. */
    static String relative(Path from, Path to) {
        Path folder = from.getParent();
        return (folder == null ? to : folder.relativize(to)).toString().replace('\\', '/');
    }
}
