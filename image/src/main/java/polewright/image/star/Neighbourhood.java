package polewright.image.star;

import java.util.List;
import java.util.function.IntConsumer;

/** Stars of a list by square cells of the frame, to find those near a position. */
final class Neighbourhood {
    private final double cell;
    private final double left;
    private final double top;
    private final int columns;
    private final int rows;
    // Stars in the order of their cells, and where each cell begins in that order.
    private final int[] ordered;
    private final int[] begin;

    /** @param reach greatest distance that will be requested, pixels */
    Neighbourhood(List<MeasuredStar> stars, double reach) {
        cell = reach;
        left = stars.stream().mapToDouble(m -> m.star().x()).min().orElse(0);
        top = stars.stream().mapToDouble(m -> m.star().y()).min().orElse(0);
        columns = 1 + column(stars.stream().mapToDouble(m -> m.star().x()).max().orElse(0));
        rows = 1 + row(stars.stream().mapToDouble(m -> m.star().y()).max().orElse(0));
        begin = new int[columns * rows + 1];
        for (MeasuredStar star : stars) {
            begin[cellOf(star) + 1]++;
        }
        for (int c = 0; c < columns * rows; c++) {
            begin[c + 1] += begin[c];
        }
        int[] next = begin.clone();
        ordered = new int[stars.size()];
        for (int i = 0; i < stars.size(); i++) {
            ordered[next[cellOf(stars.get(i))]++] = i;
        }
    }

    /**
     * Passes on the indices of those within reach of a star, and of some a little beyond; of the star itself too if it
     * is listed.
     */
    void forEachAbout(MeasuredStar star, IntConsumer action) {
        int column = column(star.star().x());
        int row = row(star.star().y());
        for (int j = Math.max(0, row - 1); j <= Math.min(rows - 1, row + 1); j++) {
            int from = begin[j * columns + Math.max(0, Math.min(columns, column - 1))];
            int to = begin[j * columns + Math.max(0, Math.min(columns, column + 2))];
            for (int k = from; k < to; k++) {
                action.accept(ordered[k]);
            }
        }
    }

    private int cellOf(MeasuredStar star) {
        return row(star.star().y()) * columns + column(star.star().x());
    }

    private int column(double x) {
        return (int) Math.floor((x - left) / cell);
    }

    private int row(double y) {
        return (int) Math.floor((y - top) / cell);
    }
}
