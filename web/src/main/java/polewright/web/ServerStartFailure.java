package polewright.web;

import java.net.BindException;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import polewright.operations.OperationFailed;
import polewright.sky.InputRefused;

/** Why a server does not listen, for whoever started it. */
final class ServerStartFailure {
    private static final int FIRST_FOR_ALL = 1024;
    private static final int LAST = 65_535;

    private ServerStartFailure() {}

    /**
     * In words.
     *
     * @param port as it was asked for; 0 for any
     * @param failure what the web server threw
     */
    static RuntimeException told(int port, RuntimeException failure) {
        if (failure instanceof OperationFailed || failure instanceof InputRefused) {
            return failure;
        }
        List<Throwable> causes = Stream.<Throwable>iterate(failure, Objects::nonNull, Throwable::getCause)
                .toList();
        return new OperationFailed(causes.stream()
                .filter(BindException.class::isInstance)
                .findFirst()
                .map(refused -> unbound(port, String.valueOf(refused.getMessage())))
                .orElseGet(() -> unserved(causes.get(causes.size() - 1))));
    }

    private static String unbound(int port, String reason) {
        if (port == 0) {
            return "no port is free. Close programs that you do not need, then start again.";
        }
        // The reason comes in the machine's language; below that port it mostly is that only root may.
        if (port < FIRST_FOR_ALL && !reason.contains("in use")) {
            return "port " + port + " is below " + FIRST_FOR_ALL
                    + ", which only root may use. Give another, such as --port " + PageServer.USUAL_PORT + ".";
        }
        return "port " + port + " cannot be used, perhaps because another program uses it. Close that program,"
                + " or give another port, such as --port " + another(port) + ".";
    }

    private static int another(int port) {
        if (port < FIRST_FOR_ALL) {
            return PageServer.USUAL_PORT;
        }
        return port < LAST ? port + 1 : port - 1;
    }

    private static String unserved(Throwable innermost) {
        String reason = innermost.getMessage();
        return "the pages cannot be served" + (reason == null ? "" : ": " + reason.replaceFirst("[. ]+$", ""))
                + ". Correct that if you can, then start again. POLEWRIGHT_DEBUG=1 before the command gives details.";
    }
}
