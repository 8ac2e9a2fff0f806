package polewright.image.star;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Stars by the cells of the frame in which they stand, to find those near a place. */
final class Neighbourhood {
    private final double cell;
    private final Map<Long, List<MeasuredStar>> cells = new HashMap<>();

    /** @param reach greatest distance that will be asked for, pixels */
    Neighbourhood(double reach) {
        cell = reach;
    }

    void add(MeasuredStar star) {
        cells.computeIfAbsent(key(star, 0, 0), k -> new ArrayList<>(2)).add(star);
    }

    /** Those within reach, and some a little beyond; itself too where it was added. */
    List<MeasuredStar> about(MeasuredStar star) {
        List<MeasuredStar> near = new ArrayList<>();
        for (int j = -1; j <= 1; j++) {
            for (int i = -1; i <= 1; i++) {
                near.addAll(cells.getOrDefault(key(star, i, j), List.of()));
            }
        }
        return near;
    }

    private long key(MeasuredStar star, int right, int down) {
        long column = (long) Math.floor(star.star().x() / cell) + right;
        long row = (long) Math.floor(star.star().y() / cell) + down;
        return row * Integer.MAX_VALUE + column;
    }
}
