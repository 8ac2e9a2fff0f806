package polewright.drawing;

import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.alignment.allowance.Allowance;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * What a picture of the zone shows.
 *
 * @param allowance the zone and its best aim
 * @param now where the axis points by the fix; empty while that is not known
 * @param path where it pointed before, the oldest first, {@code now} not among them
 * @param possible where it may point instead, by explanations that do not agree; empty when they do
 * @param goal where the advised turns would bring it
 * @param northern whether the site is in the north: east is on the right of someone who faces the pole there, and on
 *     the left in the south
 */
public record ZoneScene(
        Allowance allowance,
        Optional<Place> now,
        List<AxisOffset> possible,
        List<Place> path,
        Optional<AxisOffset> goal,
        boolean northern) {
    /** Where the axis pointed, and how well that is known if it is. */
    public record Place(AxisOffset offset, Optional<OffsetCovariance> covariance) {}

    public ZoneScene {
        possible = List.copyOf(possible);
        path = List.copyOf(path);
    }

    /** A zone alone. */
    public static ZoneScene of(Allowance allowance, boolean northern) {
        return new ZoneScene(allowance, Optional.empty(), List.of(), List.of(), Optional.empty(), northern);
    }

    public ZoneScene withNow(AxisOffset offset, OffsetCovariance covariance) {
        return new ZoneScene(
                allowance, Optional.of(new Place(offset, Optional.of(covariance))), possible, path, goal, northern);
    }

    /** With the places between which nothing has decided yet. */
    public ZoneScene withPossible(List<AxisOffset> places) {
        return new ZoneScene(allowance, now, places, path, goal, northern);
    }

    public ZoneScene withPath(List<Place> earlier) {
        return new ZoneScene(allowance, now, possible, earlier, goal, northern);
    }

    public ZoneScene withGoal(AxisOffset afterTurns) {
        return new ZoneScene(allowance, now, possible, path, Optional.of(afterTurns), northern);
    }

    /** Arcminutes to the right and up from the true pole, as someone sees it who faces the pole. */
    public Vector2D seen(AxisOffset offset) {
        double east = offset.east().arcminutes();
        return new Vector2D(northern ? east : -east, offset.up().arcminutes());
    }

    public String rightWord() {
        return northern ? "east" : "west";
    }

    public String leftWord() {
        return northern ? "west" : "east";
    }

    public String poleWord() {
        return northern ? "north" : "south";
    }

    /** The region about a place that {@code sigmas} standard deviations reach, as {@link #seen}; empty if unknown. */
    public List<Vector2D> region(Place place, double sigmas) {
        return place.covariance()
                .map(covariance -> SigmaRegion.outline(seen(place.offset()), covariance, northern, sigmas))
                .orElse(List.of());
    }

    /** Parallel lines that shade the region of 1 sigma about a place, each as its two ends. */
    List<List<Vector2D>> shading(Place place, int lines) {
        return place.covariance()
                .map(covariance -> SigmaRegion.hatching(seen(place.offset()), covariance, northern, 1, lines))
                .orElse(List.of());
    }
}
