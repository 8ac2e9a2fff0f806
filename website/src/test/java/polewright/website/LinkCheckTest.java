package polewright.website;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Broken links, and anything loaded from another server, are reported. */
class LinkCheckTest {
    @TempDir
    private Path site;

    @BeforeEach
    void write() throws IOException {
        Files.createDirectories(site.resolve("docs"));
        Files.writeString(site.resolve("docs/there.html"), "<h2 id=\"part\">Part</h2>");
    }

    private void page(String body) throws IOException {
        Files.writeString(site.resolve("index.html"), body);
    }

    @Test
    void goodLinks() throws IOException {
        page(
                "<a href=\"docs/there.html#part\">a</a> <a href=\"https://www.example.org/\">b</a> <a href=\"#c\" id=\"c\">c</a>");
        assertThat(LinkCheck.faults(site)).isEmpty();
    }

    @Test
    void missingPage_andMissingPart() throws IOException {
        page("<a href=\"docs/nowhere.html\">a</a> <a href=\"docs/there.html#nothing\">b</a> <a href=\"#c\">c</a>");
        assertThat(LinkCheck.faults(site))
                .containsExactlyInAnyOrder(
                        "index.html has no docs/nowhere.html",
                        "index.html has no docs/there.html#nothing",
                        "index.html has no #c");
    }

    @Test
    void linkOutOfTheWebsite() throws IOException {
        page("<a href=\"../secret.html\">a</a>");
        assertThat(LinkCheck.faults(site)).containsExactly("index.html has no ../secret.html");
    }

    @Test
    void whatIsLoadedFromAnotherOrigin() throws IOException {
        page("<img src=\"https://www.example.org/a.png\"><link rel=\"stylesheet\" href=\"//www.example.org/b.css\">");
        Files.writeString(site.resolve("own.css"), "body { background: url('https://www.example.org/c.png'); }");
        Files.writeString(site.resolve("own.svg"), "<svg><image href=\"https://www.example.org/d.png\"/></svg>");
        assertThat(LinkCheck.faults(site))
                .containsExactlyInAnyOrder(
                        "index.html loads https://www.example.org/a.png",
                        "index.html loads //www.example.org/b.css",
                        "own.css loads https://www.example.org/c.png",
                        "own.svg loads https://www.example.org/d.png");
    }

    @Test
    void documentThatLinksToNoFile() throws IOException {
        Path root = site.resolve("repository");
        Files.createDirectories(root.resolve("docs"));
        Files.createDirectories(root.resolve("bench"));
        for (String name : new String[] {"README.md", "CHANGELOG.md", "CONTRIBUTING.md", "bench/README.md"}) {
            Files.writeString(root.resolve(name), "# Title\n[gone](docs/gone.md)");
        }
        assertThat(Website.build(root, site.resolve("built"), Optional.empty()))
                .contains("README.md links to docs/gone.md");
    }
}
