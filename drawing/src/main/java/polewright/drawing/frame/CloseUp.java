package polewright.drawing.frame;

import java.util.List;
import java.util.Optional;

/**
 * A magnified part of a frame, with the frame's aspect ratio.
 *
 * @param times magnification: the frame's width over the part's; 1 for the whole
 * @param x its centre as a fraction of the frame's width, from the left
 * @param y its centre as a fraction of the frame's height, from the upper edge
 */
public record CloseUp(int times, double x, double y) {
    /** The whole frame. */
    public static final CloseUp WHOLE = new CloseUp(1, 0.5, 0.5);

    // Pixels as large as a fingertip show nothing more.
    private static final int MOST_TIMES = 64;
    // The step of a sideways move, as a fraction of the visible part.
    private static final double STEP = 0.5;

    public CloseUp {
        times = Math.max(1, Math.min(MOST_TIMES, times));
        double half = 0.5 / times;
        x = Math.max(half, Math.min(1 - half, x));
        y = Math.max(half, Math.min(1 - half, y));
    }

    /** Its left edge as a fraction of the frame's width. */
    public double left() {
        return x - 0.5 / times;
    }

    /** Its upper edge as a fraction of the frame's height. */
    public double top() {
        return y - 0.5 / times;
    }

    public boolean isWhole() {
        return times == 1;
    }

    /** Zooms in; from the whole frame directly to the magnification that shows every pixel. */
    public CloseUp closer(int fullSize) {
        return new CloseUp(isWhole() ? fullSize : 2 * times, x, y);
    }

    /** Zooms out, in the end to the whole frame. */
    public CloseUp wider(int fullSize) {
        return times / 2 < fullSize ? WHOLE : new CloseUp(times / 2, x, y);
    }

    /** Moved sideways, x to the right and y down. */
    public CloseUp moved(int right, int down) {
        return new CloseUp(times, x + STEP * right / times, y + STEP * down / times);
    }

    /** Around another point, given as fractions of the frame's width and height. */
    public CloseUp around(double otherX, double otherY) {
        return new CloseUp(times, otherX, otherY);
    }

    /** The overlay for this part, in points of a picture as large as the whole frame's. */
    public FrameScene of(FrameScene whole) {
        if (isWhole()) {
            return whole;
        }
        List<FrameScene.Star> stars = whole.stars().stream()
                .map(star -> new FrameScene.Star(seen(whole, star.place()), star.magnitude(), star.name()))
                .filter(star -> holds(whole, star.place()))
                .toList();
        return new FrameScene(
                whole.name(),
                whole.at(),
                whole.width(),
                whole.height(),
                whole.found(),
                stars,
                whole.unmatched().stream()
                        .map(place -> seen(whole, place))
                        .filter(place -> holds(whole, place))
                        .toList(),
                seen(whole, whole.pole()),
                whole.axis().map(axis -> seen(whole, axis)),
                whole.point().times(1.0 / times),
                whole.north(),
                whole.east());
    }

    private FrameScene.Place seen(FrameScene whole, FrameScene.Place place) {
        return new FrameScene.Place(
                (place.x() - left() * whole.width()) * times, (place.y() - top() * whole.height()) * times);
    }

    private static boolean holds(FrameScene whole, FrameScene.Place place) {
        return place.x() >= 0 && place.x() <= whole.width() && place.y() >= 0 && place.y() <= whole.height();
    }

    /**
     * A mark outside the part is shown by an arrow at its edge; its distance is still measured from the frame's
     * centre.
     */
    private FrameScene.Mark seen(FrameScene whole, FrameScene.Mark mark) {
        if (mark.place().isEmpty()) {
            return rimmed(whole, mark, mark.direction());
        }
        FrameScene.Place place = seen(whole, mark.place().get());
        double direction = Math.atan2(place.y() - whole.height() / 2.0, place.x() - whole.width() / 2.0);
        if (!holds(whole, place)) {
            return rimmed(whole, mark, direction);
        }
        return new FrameScene.Mark(
                mark.label(),
                Optional.of(place),
                true,
                rim(whole, direction),
                direction,
                mark.away(),
                mark.outline().stream().map(corner -> seen(whole, corner)).toList());
    }

    private static FrameScene.Mark rimmed(FrameScene whole, FrameScene.Mark mark, double direction) {
        return new FrameScene.Mark(
                mark.label(), Optional.empty(), false, rim(whole, direction), direction, mark.away(), List.of());
    }

    /** Where a line from the centre leaves the picture. */
    private static FrameScene.Place rim(FrameScene whole, double direction) {
        double across = whole.width() / 2.0;
        double down = whole.height() / 2.0;
        double far = Math.min(
                across / Math.max(1e-9, Math.abs(Math.cos(direction))),
                down / Math.max(1e-9, Math.abs(Math.sin(direction))));
        return new FrameScene.Place(across + far * Math.cos(direction), down + far * Math.sin(direction));
    }
}
