package polewright.website;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.ext.heading.anchor.HeadingAnchorExtension;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.Entities;

/** Writes a document as a page: the head, the menu, the headings of the page, and the text. */
final class PageWriter {
    private static final List<Extension> EXTENSIONS =
            List.of(TablesExtension.create(), HeadingAnchorExtension.create());
    private static final Parser PARSER = Parser.builder().extensions(EXTENSIONS).build();
    private static final HtmlRenderer RENDERER =
            HtmlRenderer.builder().extensions(EXTENSIONS).escapeHtml(true).build();
    /** A page with fewer sections needs no list of them. */
    private static final int FEWEST_SECTIONS = 4;

    private final Map<String, Path> menu;

    /**
     * A writer of pages.
     *
     * @param menu the pages that each page links to, relative to the website, with their names
     */
    PageWriter(Map<String, Path> menu) {
        this.menu = new LinkedHashMap<>(menu);
    }

    static Node parse(String markdown) {
        return PARSER.parse(markdown);
    }

    /**
     * The page of a document.
     *
     * @param page its address, relative to the website
     */
    String write(Path page, Node document) {
        Document text = Jsoup.parseBodyFragment(RENDERER.render(document));
        // A wide table scrolls by itself, not the page.
        text.select("table").wrap("<div class=\"table\"></div>");
        Element heading = text.selectFirst("h1");
        String title = heading == null ? "Polewright" : heading.text();
        String home = title.equals("Polewright") ? title : title + " · Polewright";
        return """
                <!doctype html>
                <html lang="en">
                <head>
                <meta charset="utf-8">
                <meta name="viewport" content="width=device-width, initial-scale=1">
                <meta name="color-scheme" content="light dark">
                <title>%s</title>
                <link rel="stylesheet" href="%s">
                </head>
                <body>
                <nav class="menu" aria-label="Website">%s</nav>
                %s<main>
                %s
                </main>
                </body>
                </html>
                """.formatted(
                        Entities.escape(home),
                        PageLinks.relative(page, Website.STYLE),
                        menu(page),
                        sections(text),
                        text.body().html());
    }

    private String menu(Path page) {
        return menu.entrySet().stream()
                .map(entry -> "<a href=\"%s\"%s>%s</a>"
                        .formatted(
                                PageLinks.relative(page, entry.getValue()),
                                entry.getValue().equals(page) ? " aria-current=\"page\"" : "",
                                Entities.escape(entry.getKey())))
                .collect(Collectors.joining(" "));
    }

    private static String sections(Document text) {
        List<Element> headings = text.select("h2[id]");
        if (headings.size() < FEWEST_SECTIONS) {
            return "";
        }
        List<String> items = new ArrayList<>();
        for (Element heading : headings) {
            items.add("<li><a href=\"#%s\">%s</a></li>"
                    .formatted(Entities.escape(heading.id()), Entities.escape(heading.text())));
        }
        return "<nav class=\"sections\" aria-label=\"On this page\"><ul>\n" + String.join("\n", items)
                + "\n</ul></nav>\n";
    }
}
