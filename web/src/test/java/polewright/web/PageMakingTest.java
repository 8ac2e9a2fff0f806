package polewright.web;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import io.javalin.Javalin;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import polewright.sky.Interruption;

/** Rendering of a page continues while its browser is connected. */
@Tag("slow")
class PageMakingTest {
    private final PageMaking making = new PageMaking();
    private final CountDownLatch begun = new CountDownLatch(1);
    private final CountDownLatch mayEnd = new CountDownLatch(1);
    private final CountDownLatch abandoned = new CountDownLatch(1);
    private Javalin server;

    @BeforeEach
    void serve() {
        server = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.routes.get("/slow", ctx -> making.render(ctx, this::slowly).ifPresent(ctx::result));
            config.routes.get("/quick", ctx -> making.render(ctx, () -> "quick").ifPresent(ctx::result));
        });
        server.start("127.0.0.1", 0);
    }

    @AfterEach
    void close() {
        server.stop();
        making.close();
    }

    private String slowly() {
        begun.countDown();
        try {
            while (mayEnd.getCount() > 0) {
                Interruption.check();
                Thread.onSpinWait();
            }
        } catch (CancellationException e) {
            abandoned.countDown();
            throw e;
        }
        return "slow";
    }

    private static String request(String path, String more) {
        return "GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\n" + more + "\r\n";
    }

    private Socket asking(String requests) throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port());
        socket.getOutputStream().write(requests.getBytes(ISO_8859_1));
        return socket;
    }

    @Test
    void rendering_browserGone_isAbandoned() throws Exception {
        Socket browser = asking(request("/slow", ""));
        assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
        browser.close();

        assertThat(abandoned.await(10, TimeUnit.SECONDS)).isTrue();
    }

    @Test
    void secondRequestMeanwhile_getsBothPages() throws Exception {
        try (Socket socket = asking(request("/slow", "") + request("/quick", "Connection: close\r\n"))) {
            assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
            assertThat(abandoned.await(1, TimeUnit.SECONDS)).isFalse();
            mayEnd.countDown();

            String answers = new String(socket.getInputStream().readAllBytes(), ISO_8859_1);
            assertThat(answers).containsSubsequence("HTTP/1.1 200", "slow", "HTTP/1.1 200", "quick");
        }
    }

    @Test
    void pipelinedRequest_isAnsweredAfterThePage() throws Exception {
        try (Socket socket = asking(request("/slow", ""))) {
            assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
            socket.getOutputStream()
                    .write(request("/quick", "Connection: close\r\n").getBytes(ISO_8859_1));
            assertThat(abandoned.await(1, TimeUnit.SECONDS)).isFalse();
            mayEnd.countDown();

            String answers = new String(socket.getInputStream().readAllBytes(), ISO_8859_1);
            assertThat(answers).containsSubsequence("HTTP/1.1 200", "slow", "HTTP/1.1 200", "quick");
        }
    }
}
