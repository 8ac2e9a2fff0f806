package polewright.bench.pages;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;

/**
 * A browser with the first page open: it waits for events on a stream, reloads what is old, and reconnects after a
 * cut.
 */
final class SoakDevice {
    private static final Duration PATIENCE = Duration.ofSeconds(30);
    private static final long BEFORE_ANOTHER_TRY_MILLIS = 1000;

    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
    private final int entry;
    private final String host;
    private final AtomicLong changes = new AtomicLong();
    private final AtomicLong frames = new AtomicLong();
    private final AtomicLong connections = new AtomicLong();
    private volatile String cookie = "";

    /**
     * A device that is not paired.
     *
     * @param entry the port of this machine where its network begins
     * @param host its name for the server
     */
    SoakDevice(int entry, String host) {
        this.entry = entry;
        this.host = host;
    }

    /** Types the code that the terminal shows. */
    void pair(String code) throws IOException, InterruptedException {
        String form = "name=Phone&code=" + URLEncoder.encode(code, StandardCharsets.UTF_8);
        HttpResponse<String> answer = client.send(
                request("/pair")
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .header("Origin", "http://" + host)
                        .POST(HttpRequest.BodyPublishers.ofString(form))
                        .build(),
                BodyHandlers.ofString());
        cookie = answer.headers()
                .firstValue("Set-Cookie")
                .orElseThrow(() -> new IllegalStateException("not paired: " + answer.statusCode()))
                .replaceFirst(";.*", "");
    }

    private HttpRequest.Builder request(String path) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + entry + path))
                .timeout(PATIENCE)
                .header("Host", host);
        return cookie.isEmpty() ? request : request.header("Cookie", cookie);
    }

    /** Opens the first page and follows it as long as the program runs. */
    void follow() {
        Thread thread = new Thread(this::stream, "device");
        thread.setDaemon(true);
        thread.start();
    }

    private void stream() {
        while (true) {
            try {
                connections.incrementAndGet();
                HttpResponse<Stream<String>> stream = client.send(
                        request("/changes?stand=0&frame=0")
                                .header("Accept", "text/event-stream")
                                .GET()
                                .build(),
                        BodyHandlers.ofLines());
                stream.body().forEach(this::countEvent);
            } catch (IOException | RuntimeException cutOff) {
                // As a browser does.
            } catch (InterruptedException e) {
                return;
            }
            try {
                Thread.sleep(BEFORE_ANOTHER_TRY_MILLIS);
            } catch (InterruptedException e) {
                return;
            }
        }
    }

    private void countEvent(String line) {
        if (line.equals("event: changed")) {
            changes.incrementAndGet();
            look("/");
        } else if (line.equals("event: frame")) {
            frames.incrementAndGet();
            look("/frames");
            look("/frames/newest.png?n=" + frames.get());
        }
    }

    private void look(String path) {
        try {
            var unused = client.send(request(path).GET().build(), BodyHandlers.ofByteArray());
        } catch (IOException cutOff) {
            // The next event causes another request.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /**
     * The time until a page's last byte.
     *
     * @return milliseconds
     */
    double millis(String path) throws IOException, InterruptedException {
        long asked = System.nanoTime();
        HttpResponse<byte[]> answer = client.send(request(path).GET().build(), BodyHandlers.ofByteArray());
        if (answer.statusCode() != 200) {
            throw new IllegalStateException(path + " is answered with " + answer.statusCode());
        }
        return (System.nanoTime() - asked) / 1e6;
    }

    /**
     * Sends a frame, as a page does.
     *
     * @return the status of the response
     */
    int upload(String name, byte[] content, String key) throws IOException, InterruptedException {
        String boundary = "frame-" + key;
        byte[] head = ("--" + boundary + "\r\nContent-Disposition: form-data; name=\"key\"\r\n\r\n" + key + "\r\n--"
                        + boundary + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\"" + name
                        + "\"\r\nContent-Type: application/octet-stream\r\n\r\n")
                .getBytes(StandardCharsets.UTF_8);
        byte[] tail = ("\r\n--" + boundary + "--\r\n").getBytes(StandardCharsets.UTF_8);
        return client.send(
                        request("/frames/upload")
                                .header("Content-Type", "multipart/form-data; boundary=" + boundary)
                                .header("Origin", "http://" + host)
                                .POST(HttpRequest.BodyPublishers.concat(
                                        HttpRequest.BodyPublishers.ofByteArray(head),
                                        HttpRequest.BodyPublishers.ofByteArray(content),
                                        HttpRequest.BodyPublishers.ofByteArray(tail)))
                                .build(),
                        BodyHandlers.ofByteArray())
                .statusCode();
    }

    /** A summary of the events on its stream. */
    String inWords() {
        return connections + " connections, " + changes + " changes of the log, " + frames + " of the frames";
    }
}
