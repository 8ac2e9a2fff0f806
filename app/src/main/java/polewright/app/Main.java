package polewright.app;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import polewright.app.command.Polewright;

/** The process: real clock, real environment, real streams. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        Workbench workbench =
                new Workbench(Clock.systemUTC(), System.getenv(), out, err, System.console() != null, Pause.REAL);
        int status = Polewright.run(workbench, args);
        out.flush();
        err.flush();
        System.exit(status);
    }
}
