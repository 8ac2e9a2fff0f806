package polewright.web.access;

import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.jspecify.annotations.Nullable;

/** The server's own error responses, where no page was reached: one sentence, under the same headers as a page. */
final class PlainErrors extends ErrorHandler {
    private static final String TEXT = "text/plain; charset=utf-8";

    /** For every method, because every response must carry the headers. */
    @Override
    public boolean errorPageForMethod(String method) {
        return true;
    }

    @Override
    protected void generateResponse(
            Request request,
            Response response,
            int code,
            @Nullable String message,
            @Nullable Throwable cause,
            Callback callback) {
        HttpFields.Mutable fields = response.getHeaders();
        GuardHeaders.ALL.forEach(fields::put);
        fields.put(HttpHeader.CONTENT_TYPE, TEXT);
        Content.Sink.write(response, true, sentence(code), callback);
    }

    private static String sentence(int status) {
        return switch (status) {
            case 404 -> "That page does not exist. Open the address that the terminal shows.";
            case 405, 501 -> "That request is not possible. Open the address that the terminal shows.";
            case 408 -> "The connection is too slow. Move closer to the Wi-Fi, then try again.";
            case 413 -> "That is too large. Send something smaller.";
            case 414, 431 -> "The address or its headers are too long. Open the address that the terminal shows.";
            case 500, 503 -> "Internal error. The log is safe. Go back and continue.";
            default -> "A browser does not send such a request. Open the address that the terminal shows.";
        };
    }
}
