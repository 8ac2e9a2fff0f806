package polewright.web;

import java.io.PrintWriter;
import java.io.StringWriter;
import polewright.launcher.Main;
import polewright.operations.Workbench;

/** The result of a command typed in a terminal next to a server, on the same log. */
record CommandOutcome(int status, String out, String err) {
    static CommandOutcome run(Workbench beside, String... words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Workbench bench = new Workbench(
                beside.clock(),
                beside.environment(),
                new PrintWriter(out),
                new PrintWriter(err),
                false,
                beside.pause());
        int status = Main.run(bench, words);
        return new CommandOutcome(status, out.toString(), err.toString());
    }

    boolean isGood() {
        return status == 0;
    }
}
