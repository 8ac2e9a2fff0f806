package polewright.operations.picture;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Labels on the picture that do not overlap. */
final class Labels {
    private static final int GAP = 14;

    private final Graphics2D canvas;
    private final Rectangle2D room;
    private final List<Rectangle2D> taken = new ArrayList<>();

    Labels(Graphics2D canvas, Rectangle2D room) {
        this.canvas = canvas;
        this.room = room;
    }

    /** Places the label next to the first of these points with room on a side; returns false if none has room. */
    boolean placeNextToAny(List<Point2D> points, String words, Font font, Color colour) {
        return points.stream().anyMatch(point -> placeNextTo(point, words, font, colour));
    }

    /** Places the label next to a point, on the first side with room; returns false if there is none. */
    boolean placeNextTo(Point2D point, String words, Font font, Color colour) {
        canvas.setFont(font);
        FontMetrics metrics = canvas.getFontMetrics();
        double width = metrics.stringWidth(words);
        double height = metrics.getAscent();
        double[][] corners = {
            {point.getX() + GAP, point.getY() + height / 2 - 2},
            {point.getX() - GAP - width, point.getY() + height / 2 - 2},
            {point.getX() - width / 2, point.getY() - GAP},
            {point.getX() - width / 2, point.getY() + GAP + height}
        };
        for (double[] corner : corners) {
            Rectangle2D box = new Rectangle2D.Double(corner[0] - 4, corner[1] - height - 2, width + 8, height + 8);
            if (room.contains(box) && taken.stream().noneMatch(box::intersects)) {
                write(words, corner[0], corner[1], box, colour);
                return true;
            }
        }
        return false;
    }

    /** Keeps labels off a region. */
    void keepOff(Rectangle2D place) {
        taken.add(place);
    }

    private void write(String words, double x, double y, Rectangle2D box, Color colour) {
        taken.add(box);
        canvas.setColor(Ink.SHADE);
        canvas.fill(box);
        canvas.setColor(colour);
        canvas.drawString(words, (float) x, (float) y);
    }
}
