package polewright.operations.camera;

import java.util.Optional;

/**
 * Frames that were placed before one of the same camera.
 *
 * @param first whose scale all others have
 * @param last that was placed, if the next is likely to look there too
 */
public record EarlierFrames(Optional<PlacedFrame> first, Optional<PlacedFrame> last) {
    /** No frame before. */
    public static final EarlierFrames NONE = new EarlierFrames(Optional.empty(), Optional.empty());

    /** Only the camera is known by it: where the next looks is not. */
    public static EarlierFrames ofFirst(Optional<PlacedFrame> first) {
        return new EarlierFrames(first, Optional.empty());
    }

    /** With one more. */
    public EarlierFrames and(PlacedFrame placed) {
        return new EarlierFrames(first.or(() -> Optional.of(placed)), Optional.of(placed));
    }
}
