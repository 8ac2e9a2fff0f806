package polewright.operations.camera;

import java.util.Optional;

/**
 * Frames of the same camera that were placed earlier.
 *
 * @param first the frame that sets the scale of all others
 * @param last the last one placed, if the next probably points there too
 */
public record EarlierFrames(Optional<PlacedFrame> first, Optional<PlacedFrame> last) {
    /** No frame before. */
    public static final EarlierFrames NONE = new EarlierFrames(Optional.empty(), Optional.empty());

    /** Identifies the camera only: the next frame may point anywhere. */
    public static EarlierFrames ofFirst(Optional<PlacedFrame> first) {
        return new EarlierFrames(first, Optional.empty());
    }

    /** With one more placed frame. */
    public EarlierFrames and(PlacedFrame placed) {
        return new EarlierFrames(first.or(() -> Optional.of(placed)), Optional.of(placed));
    }
}
