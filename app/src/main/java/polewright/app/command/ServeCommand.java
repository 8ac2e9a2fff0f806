package polewright.app.command;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import polewright.app.Workbench;
import polewright.app.web.NightDesk;
import polewright.app.web.PageServer;

@Command(
        name = "serve",
        description = "Serve the pages for the phone and the laptop, until Ctrl-C.",
        footer = {"", "For example:", "  polewright serve"})
final class ServeCommand implements Callable<Integer> {
    private static final String LOOPBACK = "127.0.0.1";
    private static final Duration BETWEEN_LOOKS = Duration.ofMillis(200);

    private final Workbench workbench;

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = "8440",
            description = "Where to listen; 0 for any that is free. Default: ${DEFAULT-VALUE}.")
    private int port;

    ServeCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        if (port < 0 || port > 65_535) {
            throw new WrongUsage("port " + port + " is outside 0 to 65535: leave --port out, or name another.");
        }
        NightDesk nights =
                new NightDesk("", workbench, (inside, words) -> Polewright.run(inside, words.toArray(String[]::new)));
        try (UntilStopped running = UntilStopped.byInterrupt();
                PageServer server = PageServer.start(List.of(nights), config -> {}, LOOPBACK, port)) {
            workbench.out().println("Polewright is at http://" + LOOPBACK + ":" + server.port() + "/");
            workbench.out().println("Ctrl-C ends it; what was logged stays.");
            workbench.out().flush();
            while (!running.isStopped()) {
                running.pause(workbench.pause(), BETWEEN_LOOKS);
            }
        }
        return 0;
    }
}
