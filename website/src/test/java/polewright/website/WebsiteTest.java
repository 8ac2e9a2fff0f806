package polewright.website;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The website of this repository's documents, without javadoc. */
class WebsiteTest {
    private static final Path ROOT = Path.of("..").toAbsolutePath().normalize();

    @TempDir
    private static Path site;

    private static Set<String> faults = Set.of();

    @BeforeAll
    static void build() throws IOException {
        faults = Website.build(ROOT, site, Optional.empty());
    }

    private static Document page(String address) throws IOException {
        return Jsoup.parse(Files.readString(site.resolve(address)));
    }

    @Test
    void everyLink_leadsSomewhere_andNothingIsLoadedFromOutside() {
        assertThat(faults).isEmpty();
    }

    @Test
    void everyDocument_hasAPage_withTitleAndMenu() throws IOException {
        for (Path document : Documents.of(ROOT).files()) {
            Document page = page(Documents.page(document).toString());
            assertThat(page.title()).as("%s", document).endsWith("Polewright");
            assertThat(page.select("h1")).as("%s", document).hasSize(1);
            assertThat(page.select(".menu a").eachText())
                    .containsExactly("Polewright", "Contents", "Commands", "Design");
        }
    }

    @Test
    void tablesPicturesAndHeadings_areOnTheirPages() throws IOException {
        assertThat(page("docs/design.html").select("td code").eachText()).contains("alignment");
        assertThat(page("docs/design.html").select("img[src=pictures/modules.svg]"))
                .hasSize(1);
        assertThat(site.resolve("docs/pictures/modules.svg")).exists();
        assertThat(site.resolve("docs/guide/now.png")).exists();
        assertThat(page("docs/design.html").select("h2#5-the-fix")).hasSize(1);
        assertThat(page("docs/design.html").select(".sections a[href=#5-the-fix]"))
                .hasSize(1);
    }

    @Test
    void pages_haveNoScript_andBothPalettes() throws IOException {
        try (Stream<Path> files = Files.walk(site)) {
            for (Path file :
                    files.filter(file -> file.toString().endsWith(".html")).toList()) {
                assertThat(Jsoup.parse(Files.readString(file)).select("script, iframe"))
                        .isEmpty();
            }
        }
        assertThat(Files.readString(site.resolve("website.css"))).contains("(prefers-color-scheme: dark)");
    }
}
