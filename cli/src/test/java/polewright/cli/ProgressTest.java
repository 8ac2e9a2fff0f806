package polewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Clock;
import java.util.Map;
import org.junit.jupiter.api.Test;
import polewright.operations.Pause;
import polewright.operations.Workbench;

/** A bar stands only while the work goes on. */
class ProgressTest {
    @Test
    void noBarIsBegunOnceTheWorkIsDone() {
        StringWriter err = new StringWriter();
        Workbench bench = new Workbench(
                Clock.systemUTC(),
                Map.of(),
                new PrintWriter(new StringWriter()),
                new PrintWriter(err),
                true,
                Pause.REAL);
        Progress progress = Progress.of(bench, new Output(), 3);
        progress.begun("decoding");
        progress.close();
        progress.show();
        progress.begun("matching");
        assertThat(err.toString()).isEmpty();
    }
}
