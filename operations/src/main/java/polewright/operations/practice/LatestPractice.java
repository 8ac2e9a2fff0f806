package polewright.operations.practice;

import java.nio.file.Path;
import java.util.Optional;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;

/** The bench of the practice that was begun last, whichever process began it or did something in it. */
public final class LatestPractice {
    private final Workbench real;
    private Optional<String> mark = Optional.empty();
    private Optional<Workbench> bench = Optional.empty();
    private Optional<Path> frames = Optional.empty();

    public LatestPractice(Workbench real) {
        this.real = real;
    }

    /**
     * Its clock and its log. Worked out anew only when something was done since: the sky is asked again for each deed.
     *
     * @throws OperationFailed if none was begun
     */
    public synchronized Workbench bench() {
        look();
        return bench.orElseThrow(
                () -> new OperationFailed("no practice has begun yet. Begin one on the page Practice."));
    }

    /** Where its camera saves; empty if it has none, or none was begun. */
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
