package polewright.drawing.zone;

import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.alignment.allowance.Allowance;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;

/**
 * The content of a picture of the zone.
 *
 * @param allowance the zone and its best aim
 * @param now the axis by the current fix; empty without a fix
 * @param path its earlier positions, oldest first, without {@code now}
 * @param possible alternative positions, by explanations that disagree; empty if they agree
 * @param goal where the advised turns would bring it
 * @param northern whether the site is in the north: facing the pole, east is on the right there, and on the left in the
 *     south
 */
public record ZoneScene(
        Allowance allowance,
        Optional<Place> now,
        List<AxisOffset> possible,
        List<Place> path,
        Optional<AxisOffset> goal,
        boolean northern) {
    /** A position of the axis, with its covariance if known. */
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

    /** With the candidate positions that nothing has decided between yet. */
    public ZoneScene withPossible(List<AxisOffset> places) {
        return new ZoneScene(allowance, now, places, path, goal, northern);
    }

    public ZoneScene withPath(List<Place> earlier) {
        return new ZoneScene(allowance, now, possible, earlier, goal, northern);
    }

    public ZoneScene withGoal(AxisOffset afterTurns) {
        return new ZoneScene(allowance, now, possible, path, Optional.of(afterTurns), northern);
    }

    /** Arcminutes to the right and up from the true pole, as seen facing the pole. */
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

    /** The outline of a place's region at {@code sigmas} standard deviations, as {@link #seen}; empty if unknown. */
    public List<Vector2D> region(Place place, double sigmas) {
        return place.covariance()
                .map(covariance -> SigmaRegion.outline(seen(place.offset()), covariance, northern, sigmas))
                .orElse(List.of());
    }

    /** Parallel lines that shade the 1 sigma region of a place, each as its two ends. */
    List<List<Vector2D>> shading(Place place, int lines) {
        return place.covariance()
                .map(covariance -> SigmaRegion.hatching(seen(place.offset()), covariance, northern, 1, lines))
                .orElse(List.of());
    }
}
