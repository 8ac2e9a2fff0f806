package polewright.image.match;

import java.util.Optional;
import polewright.sky.atlas.StarAtlas;

/** Persistent storage of the patterns of the whole sky; may be used by several threads. */
public interface PatternStore {
    /** Stores nothing: patterns are computed at every start. */
    PatternStore NONE = new PatternStore() {
        @Override
        public Optional<StoredPatterns> kept(StarAtlas atlas) {
            return Optional.empty();
        }

        @Override
        public void keep(StoredPatterns patterns) {
            // Nothing to do.
        }
    };

    /** The stored patterns of an atlas; empty if there are none, or they are damaged. */
    Optional<StoredPatterns> kept(StarAtlas atlas);

    /** Stores computed patterns. If that fails, only time is lost. */
    void keep(StoredPatterns patterns);
}
