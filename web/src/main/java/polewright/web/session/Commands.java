package polewright.web.session;

import java.util.List;
import polewright.operations.Workbench;

/** Runs one command line in this process. */
@FunctionalInterface
public interface Commands {
    /**
     * As if it were typed; what it prints goes to the workbench.
     *
     * @return the exit status: 0 good
     */
    int run(Workbench workbench, List<String> words);
}
