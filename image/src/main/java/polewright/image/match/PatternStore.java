package polewright.image.match;

import java.util.Optional;
import polewright.sky.atlas.StarAtlas;

/** Where the patterns of the whole sky are kept from one start to the next; may be asked by several threads. */
public interface PatternStore {
    /** Keeps nothing: they are worked out at every start. */
    PatternStore NONE = new PatternStore() {
        @Override
        public Optional<StoredPatterns> kept(StarAtlas atlas) {
            return Optional.empty();
        }

        @Override
        public void keep(StoredPatterns patterns) {
            // Nowhere to.
        }
    };

    /** Those of an atlas; empty where there are none, or they are no longer sound. */
    Optional<StoredPatterns> kept(StarAtlas atlas);

    /** Keeps what had to be worked out. Where that cannot be done nothing is lost but time. */
    void keep(StoredPatterns patterns);
}
