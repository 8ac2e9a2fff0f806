package polewright.operations.practice;

import java.nio.file.Path;
import java.util.Optional;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;

/** The workbench of the most recent practice, whichever process began it or acted in it. */
public final class LatestPractice {
    private final Workbench real;
    private Optional<String> mark = Optional.empty();
    private Optional<Workbench> bench = Optional.empty();
    private Optional<Path> frames = Optional.empty();

    public LatestPractice(Workbench real) {
        this.real = real;
    }

    /**
     * Its clock and its log. Recomputed only after another action, because every action has to be replayed.
     *
     * @throws OperationFailed if none was begun
     */
    public synchronized Workbench bench() {
        look();
        return bench.orElseThrow(
                () -> new OperationFailed("no practice has begun yet. Begin one with {do:practice-begin}."));
    }

    /** The folder of its camera; empty if it has none, or no practice was begun. */
    public synchronized Optional<Path> frames() {
        look();
        return frames;
    }

    private void look() {
        Optional<String> now = PracticeNight.mark(real);
        if (!now.equals(mark)) {
            Optional<PracticeNight> night = PracticeNight.current(real);
            bench = night.map(latest -> latest.bench(real));
            frames = night.filter(latest -> latest.state().scenario().hasCamera())
                    .map(PracticeNight::frames);
            mark = now;
        }
    }
}
