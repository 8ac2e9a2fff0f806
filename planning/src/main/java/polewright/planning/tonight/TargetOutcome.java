package polewright.planning.tonight;

import polewright.mount.reach.Barrier;

/** What tonight holds for one target. */
public sealed interface TargetOutcome {
    Target target();

    /** It can be looked at. */
    record Shows(Observability showing) implements TargetOutcome {
        @Override
        public Target target() {
            return showing.target();
        }
    }

    /** Something is in the way whenever it is dark enough. */
    record OutOfReach(Target target, Barrier barrier) implements TargetOutcome {}

    /** The night is not dark enough for it. */
    record TooLight(Target target) implements TargetOutcome {}
}
