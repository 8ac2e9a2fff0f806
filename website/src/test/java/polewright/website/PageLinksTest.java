package polewright.website;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.commonmark.node.Node;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;

/** The links of a document become those of its page. */
class PageLinksTest {
    private static final Path ROOT = Path.of("..").toAbsolutePath().normalize();
    private static final Path DESIGN = Path.of("docs/design.md");

    private Document page(String markdown) throws IOException {
        Documents documents = Documents.of(ROOT, List.of(Path.of("README.md"), Path.of("docs/README.md"), DESIGN));
        Node parsed = PageWriter.parse(markdown);
        parsed.accept(new PageLinks(documents, DESIGN, Optional.of(SourceTypes.of(ROOT))));
        return Jsoup.parse(new PageWriter(Map.of()).write(Documents.page(DESIGN), parsed));
    }

    private String link(String markdown) throws IOException {
        return page(markdown).select("main a").attr("href");
    }

    @Test
    void documents_becomePages_withTheirParts() throws IOException {
        assertThat(link("[all](README.md)")).isEqualTo("index.html");
        assertThat(link("[top](../README.md#with-a-camera)")).isEqualTo("../index.html#with-a-camera");
        assertThat(link("[part](#5-the-fix)")).isEqualTo("#5-the-fix");
    }

    @Test
    void nameOfADocument_becomesItsTitle() throws IOException {
        assertThat(page("[design.md](design.md)").select("main a").text()).isEqualTo("Design");
        assertThat(page("[the map](design.md)").select("main a").text()).isEqualTo("the map");
    }

    @Test
    void otherFilesAndServers_stay() throws IOException {
        assertThat(link("[schema](schema/event.schema.json)")).isEqualTo("schema/event.schema.json");
        assertThat(link("[standard](https://www.example.org/)")).isEqualTo("https://www.example.org/");
    }

    @Test
    void typeInBackticks_leadsToItsJavadoc() throws IOException {
        assertThat(link("`FixSolver`")).isEqualTo("../javadoc/polewright/alignment/fix/FixSolver.html");
        assertThat(page("`NoSuchType` and `sight compass 4`").select("main a")).isEmpty();
    }

    @Test
    void nameOfTwoTypes_leadsNowhere() throws IOException {
        // One in the advice, one in the fix.
        assertThat(page("`Candidate`").select("main a")).isEmpty();
    }

    @Test
    void markup_isShownAsText() throws IOException {
        assertThat(page("a <script>alert(1)</script> b").select("script")).isEmpty();
    }
}
