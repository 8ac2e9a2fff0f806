package polewright.launcher;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import picocli.CommandLine;
import polewright.cli.Polewright;
import polewright.operations.Pause;
import polewright.operations.Workbench;

/** The process: real clock, real environment, real streams. */
public final class Main {
    // The launcher looks: Java tells a terminal from a pipe only from version 22 on.
    private static final String TERMINAL = "polewright.terminal";

    private static final List<Class<?>> FURTHER = List.of(ServeCommand.class);

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
        int status = run(workbench, args);
        out.flush();
        err.flush();
        System.exit(status);
    }

    /** Runs one command line with all commands; returns the exit status. */
    public static int run(Workbench workbench, String... args) {
        return Polewright.run(workbench, FURTHER, args);
    }

    /** The commands as the command line's library sees them: all, or the one that is named first. */
    public static CommandLine commands(Workbench workbench, String... args) {
        return Polewright.commands(workbench, FURTHER, args);
    }
}
