package polewright.web.session;

import java.util.List;
import polewright.operations.Workbench;

/** Runs one command line in this process. */
@FunctionalInterface
public interface Commands {
    /**
     * Runs the command as if it were typed; its output goes to the workbench.
     *
     * @return the exit status: 0 for success
     */
    int run(Workbench workbench, List<String> words);
}
