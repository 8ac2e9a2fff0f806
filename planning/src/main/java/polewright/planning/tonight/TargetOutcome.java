package polewright.planning.tonight;

import polewright.mount.reach.Barrier;

/** The outcome for one target tonight. */
public sealed interface TargetOutcome {
    Target target();

    /** It can be observed. */
    record Shows(Observability showing) implements TargetOutcome {
        @Override
        public Target target() {
            return showing.target();
        }
    }

    /** Something blocks it whenever it is dark enough. */
    record OutOfReach(Target target, Barrier barrier) implements TargetOutcome {}

    /** The night is not dark enough for it. */
    record TooLight(Target target) implements TargetOutcome {}
}
