package polewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.BindException;
import java.net.SocketException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.operations.OperationFailed;

/** The message for a server that cannot start gives the reason, if known, and names a usable port. */
class ServerStartFailureTest {
    private static final String TAKEN = "Address already in use";

    /** An exception as the web server throws it, with the operating system's message several causes deep. */
    private static RuntimeException deep(Exception innermost) {
        return new IllegalStateException("Port already in use.", new IOException("Failed to bind", innermost));
    }

    @ParameterizedTest
    @MethodSource
    void unusablePort_messageNamesAUsablePort(int port, String message, String sentence) {
        assertThat(ServerStartFailure.toException(port, deep(new BindException(message))))
                .hasMessage(sentence);
    }

    static Stream<Arguments> unusablePort_messageNamesAUsablePort() {
        String root = " is below 1024, which only root may use. Give another, such as --port 8440.";
        String taken = " cannot be used, perhaps because another program uses it. Close that program, or give another"
                + " port,"
                + " such as --port ";
        return Stream.of(
                Arguments.of(8440, TAKEN, "port 8440" + taken + "8441."),
                Arguments.of(65_535, TAKEN, "port 65535" + taken + "65534."),
                Arguments.of(80, TAKEN, "port 80" + taken + "8440."),
                Arguments.of(80, "Permission denied", "port 80" + root),
                // The operating system's messages are in the user's language.
                Arguments.of(443, "Keine Berechtigung", "port 443" + root),
                Arguments.of(0, TAKEN, "no port is free. Close programs that you do not need, then start again."));
    }

    @Test
    void otherFailure_keepsItsMessage() {
        assertThat(ServerStartFailure.toException(8440, deep(new SocketException("Too many open files"))))
                .hasMessageStartingWith("the pages cannot be served: Too many open files.")
                .message()
                .doesNotContain("8440", "Exception");
        assertThat(ServerStartFailure.toException(8440, new IllegalStateException()))
                .hasMessageStartingWith("the pages cannot be served. ")
                .message()
                .doesNotContain("null", "Exception");
        OperationFailed plain = new OperationFailed("the log is busy.");
        assertThat(ServerStartFailure.toException(8440, plain)).isSameAs(plain);
    }
}
