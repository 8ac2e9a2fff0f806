package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A percent sign without two hexadecimal digits is the sender's error, not an internal failure. */
class BrokenEscapesTest {
    @TempDir
    private Path folder;

    private KnockedDoor server;

    @BeforeEach
    void open() {
        server = new KnockedDoor(folder);
    }

    @AfterEach
    void close() {
        server.close();
    }

    @ParameterizedTest
    @CsvSource({
        "/do/note, key=note-of-the-test&text=dew%zz",
        "/do/note, key=note-of-the-test&te%=dew",
        "/frames/settled, key=settled-of-test&night=%1",
        "/palette, palette=day%",
        "/pair, code=%%%",
    })
    void inAForm_areABadRequest(String path, String form) throws Exception {
        assertThat(post(path, form)).startsWith("HTTP/1.1 400 ").contains("arrived damaged");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/?said=%zz", "/frames/newest.png?x=%1", "/changes?events=%"})
    void inAnAddress_areABadRequest(String address) throws Exception {
        assertThat(server.get("127.0.0.1", address, "")).startsWith("HTTP/1.1 400 ");
    }

    @Test
    void wholeEscapes_areDecoded() throws Exception {
        assertThat(post("/palette", "palette=d%61y&back=%2Frig"))
                .startsWith("HTTP/1.1 303 ")
                .contains("palette=day;", "/rig\r\n");
    }

    private String post(String path, String form) throws Exception {
        return server.raw("POST " + path + " HTTP/1.1\nHost: 127.0.0.1:PORT\nOrigin: http://127.0.0.1:PORT\n"
                + "Content-Type: application/x-www-form-urlencoded\nContent-Length: " + form.length()
                + "\nConnection: close\n\n" + form);
    }
}
