package polewright.bench.frames;

import java.util.ArrayList;
import java.util.List;

/** The criteria of one bench: each is printed as met or missed; one missed makes the bench fail. */
public final class Verdict {
    private final List<String> missed = new ArrayList<>();

    public void require(boolean met, String criterion) {
        System.out.println((met ? "met     " : "MISSED  ") + criterion);
        if (!met) {
            missed.add(criterion);
        }
    }

    /** The exit status of the process. */
    public int status() {
        return missed.isEmpty() ? 0 : 1;
    }
}
