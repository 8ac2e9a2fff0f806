package polewright.image.match;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.sky.atlas.StarAtlas;

/** Stores patterns in memory as a file would, and counts the requests. */
final class KeptInMemory implements PatternStore {
    /** Shared by the tests of one run, because computing the whole sky takes seconds. */
    static final KeptInMemory WHOLE_SKY = new KeptInMemory();

    private final List<StoredPatterns> kept = new ArrayList<>();

    @Override
    public synchronized Optional<StoredPatterns> kept(StarAtlas atlas) {
        return kept.isEmpty()
                ? Optional.empty()
                : StoredPatterns.of(kept.get(kept.size() - 1).bytes(), atlas);
    }

    @Override
    public synchronized void keep(StoredPatterns patterns) {
        kept.add(patterns);
    }

    synchronized int timesKept() {
        return kept.size();
    }

    /** The whole sky's, computed at the first call. */
    static synchronized StoredPatterns wholeSky() {
        if (WHOLE_SKY.timesKept() == 0) {
            WHOLE_SKY.keep(StoredPatterns.computed(StarAtlas.bundled()));
        }
        return WHOLE_SKY.kept(StarAtlas.bundled()).orElseThrow();
    }
}
