package polewright.web;

import java.net.BindException;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import polewright.operations.OperationFailed;
import polewright.sky.InputRefused;

/** Why the server could not start, worded for the person who started it. */
final class ServerStartFailure {
    private static final int FIRST_UNPRIVILEGED_PORT = 1024;
    private static final int LAST = 65_535;

    private ServerStartFailure() {}

    /**
     * The failure as an exception with a message for the person.
     *
     * @param port as requested; 0 for any
     * @param failure what the web server threw
     */
    static RuntimeException toException(int port, RuntimeException failure) {
        if (failure instanceof OperationFailed || failure instanceof InputRefused) {
            return failure;
        }
        List<Throwable> causes = Stream.<Throwable>iterate(failure, Objects::nonNull, Throwable::getCause)
                .toList();
        return new OperationFailed(causes.stream()
                .filter(BindException.class::isInstance)
                .findFirst()
                .map(refused -> cannotBind(port, String.valueOf(refused.getMessage())))
                .orElseGet(() -> otherFailure(causes.get(causes.size() - 1))));
    }

    private static String cannotBind(int port, String reason) {
        if (port == 0) {
            return "no port is free. Close programs that you do not need, then start again.";
        }
        // The reason comes in the machine's language. Below that port it is mostly that only root may listen.
        if (port < FIRST_UNPRIVILEGED_PORT && !reason.contains("in use")) {
            return "port " + port + " is below " + FIRST_UNPRIVILEGED_PORT
                    + ", which only root may use. Give another, such as --port " + PageServer.USUAL_PORT + ".";
        }
        return "port " + port + " cannot be used, perhaps because another program uses it. Close that program,"
                + " or give another port, such as --port " + otherPort(port) + ".";
    }

    private static int otherPort(int port) {
        if (port < FIRST_UNPRIVILEGED_PORT) {
            return PageServer.USUAL_PORT;
        }
        return port < LAST ? port + 1 : port - 1;
    }

    private static String otherFailure(Throwable innermost) {
        String reason = innermost.getMessage();
        return "the pages cannot be served" + (reason == null ? "" : ": " + reason.replaceFirst("[. ]+$", ""))
                + ". Correct that if you can, then start again. POLEWRIGHT_DEBUG=1 before the command gives details.";
    }
}
