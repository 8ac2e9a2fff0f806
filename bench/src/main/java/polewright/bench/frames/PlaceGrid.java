package polewright.bench.frames;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/** Positions in a picture, indexed to count those near one. */
final class PlaceGrid {
    private final double reach;
    private final Map<Long, List<Vector2D>> cells = new HashMap<>();

    PlaceGrid(List<Vector2D> places, double reach) {
        this.reach = reach;
        places.forEach(p ->
                cells.computeIfAbsent(cell(p, 0, 0), c -> new ArrayList<>()).add(p));
    }

    boolean hasNear(Vector2D place) {
        return near(place) > 0;
    }

    /** The number within reach. */
    int near(Vector2D place) {
        int near = 0;
        for (int across = -1; across <= 1; across++) {
            for (int down = -1; down <= 1; down++) {
                for (Vector2D other : cells.getOrDefault(cell(place, across, down), List.of())) {
                    near += other.distance(place) < reach ? 1 : 0;
                }
            }
        }
        return near;
    }

    private long cell(Vector2D place, int across, int down) {
        long column = (long) Math.floor(place.getX() / reach) + across;
        long row = (long) Math.floor(place.getY() / reach) + down;
        return (column << 32) + row;
    }
}
