package polewright.web;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;

/** Fetches pages and posts forms as a browser does, without one. */
final class PageReader {
    private final ServedNight night;
    private final HttpClient client = HttpClient.newHttpClient();

    PageReader(ServedNight night) {
        this.night = night;
    }

    HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return client.send(
                HttpRequest.newBuilder(URI.create(night.address(path))).build(), HttpResponse.BodyHandlers.ofString());
    }

    /** The content of a page. */
    String page(String path) throws IOException, InterruptedException {
        return get(path).body();
    }

    /** Submits the form of this path with all its fields, including the submission key. */
    HttpResponse<String> post(String path, Map<String, String> fields) throws IOException, InterruptedException {
        return client.send(request(path, fields), HttpResponse.BodyHandlers.ofString());
    }

    /** The same without waiting for the answer. */
    CompletableFuture<HttpResponse<String>> press(String path, Map<String, String> fields) {
        return client.sendAsync(request(path, fields), HttpResponse.BodyHandlers.ofString());
    }

    private HttpRequest request(String path, Map<String, String> fields) {
        String body = fields.entrySet().stream()
                .map(field -> field.getKey() + "=" + URLEncoder.encode(field.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return HttpRequest.newBuilder(URI.create(night.address(path)))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Origin", night.address(""))
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build();
    }
}
