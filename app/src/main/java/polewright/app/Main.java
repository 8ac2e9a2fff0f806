package polewright.app;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneId;
import polewright.app.command.Polewright;

/** The process: real clock, real environment, real streams. */
public final class Main {
    // The launcher looks: Java tells a terminal from a pipe only from version 22 on.
    private static final String TERMINAL = "polewright.terminal";

    private Main() {}

    public static void main(String[] args) {
        PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        Workbench workbench = new Workbench(
                Clock.system(ZoneId.systemDefault()),
                System.getenv(),
                out,
                err,
                Boolean.getBoolean(TERMINAL),
                Pause.REAL);
        int status = Polewright.run(workbench, args);
        out.flush();
        err.flush();
        System.exit(status);
    }
}
