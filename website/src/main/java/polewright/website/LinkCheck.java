package polewright.website;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** Checks a built website: every link within it leads somewhere, and nothing is loaded from outside. */
final class LinkCheck {
    private static final Pattern ABSOLUTE = Pattern.compile("(?i)(?:[a-z][a-z0-9+.-]*:|//).*");
    private static final Pattern LOADED_BY_STYLE =
            Pattern.compile("(?:url\\(\\s*['\"]?|@import\\s+['\"])([^'\")\\s;]+)");
    private static final Pattern LOADED_BY_PICTURE = Pattern.compile("<\\w+[^>]*?\\s(?:xlink:)?href=\"([^\"]+)\"");

    private final Path site;
    private final Map<Path, Set<String>> anchors = new HashMap<>();
    private final Set<String> faults = new TreeSet<>();

    private LinkCheck(Path site) {
        this.site = site;
    }

    /** What is wrong, each fault with its page; empty if nothing is. */
    static Set<String> faults(Path site) throws IOException {
        LinkCheck check = new LinkCheck(site);
        try (Stream<Path> files = Files.walk(site)) {
            for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                check.check(file);
            }
        }
        return check.faults;
    }

    private void check(Path file) throws IOException {
        String name = file.toString();
        if (name.endsWith(".html")) {
            Document page = read(file);
            for (Element element : page.select("[href]")) {
                boolean isLink = element.normalName().equals("a");
                checkAddress(file, element.attr("href"), isLink);
            }
            for (Element element : page.select("[src]")) {
                checkAddress(file, element.attr("src"), false);
            }
            for (Element style : page.select("style")) {
                checkLoads(file, LOADED_BY_STYLE, style.data());
            }
        } else if (name.endsWith(".css")) {
            checkLoads(file, LOADED_BY_STYLE, Files.readString(file));
        } else if (name.endsWith(".svg")) {
            checkLoads(file, LOADED_BY_STYLE, Files.readString(file));
            checkLoads(file, LOADED_BY_PICTURE, Files.readString(file));
        }
    }

    private void checkLoads(Path file, Pattern pattern, String text) throws IOException {
        Matcher loaded = pattern.matcher(text);
        while (loaded.find()) {
            checkAddress(file, loaded.group(1), false);
        }
    }

    /** An address on another server may be a link; it may not be loaded. */
    private void checkAddress(Path file, String address, boolean isLink) throws IOException {
        if (ABSOLUTE.matcher(address).matches()) {
            if (!isLink && !address.startsWith("data:")) {
                report(file, "loads", address);
            }
            return;
        }
        int hash = address.indexOf('#');
        String path = hash < 0 ? address : address.substring(0, hash);
        String anchor = hash < 0 ? "" : decoded(address.substring(hash + 1));
        Path target = path.isEmpty() ? file : file.resolveSibling(decoded(path)).normalize();
        if (!target.startsWith(site) || !Files.isRegularFile(target)) {
            report(file, "has no", address);
        } else if (!anchor.isEmpty()
                && target.toString().endsWith(".html")
                && !anchors(target).contains(anchor)) {
            report(file, "has no", address);
        }
    }

    private void report(Path file, String fault, String address) {
        faults.add(site.relativize(file) + " " + fault + " " + address);
    }

    private Set<String> anchors(Path page) throws IOException {
        Set<String> known = anchors.get(page);
        if (known == null) {
            Document read = read(page);
            known = Set.copyOf(Stream.of(
                            List.copyOf(read.select("[id]").eachAttr("id")),
                            read.select("a[name]").eachAttr("name"))
                    .flatMap(List::stream)
                    .toList());
            anchors.put(page, known);
        }
        return known;
    }

    private static Document read(Path page) throws IOException {
        return Jsoup.parse(Files.readString(page));
    }

    private static String decoded(String address) {
        return address.contains("%") ? URI.create(address).getPath() : address;
    }
}
