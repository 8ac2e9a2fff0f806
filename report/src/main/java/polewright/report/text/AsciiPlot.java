package polewright.report.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.ScaleBar;
import polewright.sky.angle.Angle;

/**
 * A map of the sky around the pole made of letters, each twice as high as wide. Points are arcminutes, right and up.
 */
final class AsciiPlot {
    private static final int COLUMNS = 41;
    private static final int LINES = 19;
    private static final double LETTER_HEIGHT = 2;
    private static final double MARGIN_COLUMNS = 2;
    private static final double LEAST_RING_COLUMNS = 4;
    private static final double LEAST_ARCMIN = 0.01;

    private final Vector2D middle;
    private final double arcminPerColumn;
    private final char[][] cells = new char[LINES][COLUMNS];
    private final Map<List<Integer>, Character> marks = new HashMap<>();

    private AsciiPlot(Vector2D middle, double arcminPerColumn) {
        this.middle = middle;
        this.arcminPerColumn = arcminPerColumn;
        for (char[] line : cells) {
            Arrays.fill(line, ' ');
        }
    }

    /** A map that includes all of the points, with the same scale in both directions. */
    static AsciiPlot showing(List<Vector2D> points) {
        Vector2D low = lowest(points);
        Vector2D size = highest(points).subtract(low);
        double across = Math.max(size.getX(), LEAST_ARCMIN) / (COLUMNS - 1 - 2 * MARGIN_COLUMNS);
        double along = Math.max(size.getY(), LEAST_ARCMIN) / (LETTER_HEIGHT * (LINES - 1) - 2 * MARGIN_COLUMNS);
        return new AsciiPlot(low.add(0.5, size), Math.max(across, along));
    }

    /** A line through the points, over anything already there. */
    void line(List<Vector2D> points, char letter) {
        for (int i = 1; i < points.size(); i++) {
            Vector2D along = points.get(i).subtract(points.get(i - 1));
            int pieces = (int) Math.ceil(3 * along.getNorm() / arcminPerColumn) + 1;
            for (int k = 0; k <= pieces; k++) {
                cell(points.get(i - 1).add((double) k / pieces, along)).ifPresent(c -> set(c, letter));
            }
        }
    }

    /** Whether a ring of points is larger than a mark on the map. */
    boolean isSeen(List<Vector2D> ring) {
        Vector2D size = highest(ring).subtract(lowest(ring));
        return Math.max(size.getX(), size.getY()) >= LEAST_RING_COLUMNS * arcminPerColumn;
    }

    /** A single letter, kept on top of lines and earlier marks; false if the point is off the map. */
    boolean mark(Vector2D point, char letter) {
        Optional<List<Integer>> cell = cell(point);
        cell.ifPresent(c -> {
            set(c, letter);
            marks.put(c, letter);
        });
        return cell.isPresent();
    }

    /** The existing mark at the position of a point. */
    Optional<Character> markAt(Vector2D point) {
        return cell(point).map(marks::get);
    }

    /** A mark at the border in the point's direction from the middle. */
    void markAtBorder(Vector2D point, char letter) {
        Vector2D from = point.subtract(middle);
        double across = Math.abs(from.getX()) / ((COLUMNS - 1) / 2.0 * arcminPerColumn);
        double along = Math.abs(from.getY()) / ((LINES - 1) / 2.0 * LETTER_HEIGHT * arcminPerColumn);
        mark(middle.add(1 / Math.max(across, along), from), letter);
    }

    /** The map with its directions and scale, and words to the right of it. */
    List<String> beside(List<String> words, String left, String right) {
        List<String> broken = new ArrayList<>();
        int room = ZoneText.WIDTH - COLUMNS - 3;
        words.forEach(line -> broken.addAll(hanging(line, room)));
        List<String> map = new ArrayList<>();
        map.add(centred("up"));
        for (char[] line : cells) {
            map.add(new String(line));
        }
        String below = centred("down");
        map.add(left + below.substring(left.length(), COLUMNS - right.length()) + right);
        map.add(scale());
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < Math.max(map.size(), broken.size()); i++) {
            String drawn = i < map.size() ? map.get(i) : " ".repeat(COLUMNS);
            String beside = i < broken.size() ? "   " + broken.get(i) : "";
            lines.add((drawn + beside).stripTrailing());
        }
        return lines;
    }

    static Vector2D lowest(List<Vector2D> points) {
        return new Vector2D(
                points.stream().mapToDouble(Vector2D::getX).min().orElse(0),
                points.stream().mapToDouble(Vector2D::getY).min().orElse(0));
    }

    static Vector2D highest(List<Vector2D> points) {
        return new Vector2D(
                points.stream().mapToDouble(Vector2D::getX).max().orElse(0),
                points.stream().mapToDouble(Vector2D::getY).max().orElse(0));
    }

    private String scale() {
        ScaleBar bar = ScaleBar.within(Angle.ofArcminutes(arcminPerColumn * COLUMNS / 2));
        int columns = (int) Math.max(1, Math.round(bar.length().arcminutes() / arcminPerColumn));
        String drawn = "|" + "-".repeat(columns - 1) + "| " + bar.words();
        return centred(drawn);
    }

    private static String centred(String words) {
        int before = (COLUMNS - words.length()) / 2;
        return " ".repeat(before) + words + " ".repeat(COLUMNS - before - words.length());
    }

    /** A line wrapped to fit, with its continuation indented under the words after the sign. */
    private static List<String> hanging(String line, int room) {
        List<String> lines = new ArrayList<>();
        String rest = line;
        String indent = "";
        while (rest.length() > room - indent.length()) {
            int at = rest.lastIndexOf(' ', room - indent.length());
            int end = at > indent.length() + 2 ? at : room - indent.length();
            lines.add(indent + rest.substring(0, end));
            rest = rest.substring(end).strip();
            indent = "   ";
        }
        lines.add(indent + rest);
        return lines;
    }

    private Optional<List<Integer>> cell(Vector2D point) {
        Vector2D from = point.subtract(middle);
        int column = (int) Math.round((COLUMNS - 1) / 2.0 + from.getX() / arcminPerColumn);
        int line = (int) Math.round((LINES - 1) / 2.0 - from.getY() / (LETTER_HEIGHT * arcminPerColumn));
        boolean isOn = column >= 0 && column < COLUMNS && line >= 0 && line < LINES;
        return isOn ? Optional.of(List.of(line, column)) : Optional.empty();
    }

    private void set(List<Integer> cell, char letter) {
        cells[cell.get(0)][cell.get(1)] = letter;
    }
}
