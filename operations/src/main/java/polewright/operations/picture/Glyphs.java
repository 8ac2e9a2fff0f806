package polewright.operations.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;

/** The shapes of the marks: they can be distinguished without colour. */
final class Glyphs {
    private static final float LINE = 2.5f;

    private Glyphs() {}

    /** A ring. */
    static void knownStar(Graphics2D canvas, Point2D at, double radius) {
        outline(
                canvas,
                new Ellipse2D.Double(at.getX() - radius, at.getY() - radius, 2 * radius, 2 * radius),
                Ink.KNOWN);
    }

    /** Two ticks that point at the star from its lower corners. */
    static void unknownStar(Graphics2D canvas, Point2D at) {
        Path2D ticks = new Path2D.Double();
        ticks.moveTo(at.getX() - 15, at.getY() + 15);
        ticks.lineTo(at.getX() - 7, at.getY() + 7);
        ticks.moveTo(at.getX() + 15, at.getY() + 15);
        ticks.lineTo(at.getX() + 7, at.getY() + 7);
        outline(canvas, ticks, Ink.UNKNOWN);
    }

    /** A cross with an open centre. */
    static void pole(Graphics2D canvas, Point2D at) {
        pole(canvas, at, 1);
    }

    static void pole(Graphics2D canvas, Point2D at, double size) {
        Path2D cross = new Path2D.Double();
        for (int[] way : new int[][] {{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
            cross.moveTo(at.getX() + 7 * size * way[0], at.getY() + 7 * size * way[1]);
            cross.lineTo(at.getX() + 26 * size * way[0], at.getY() + 26 * size * way[1]);
        }
        outline(canvas, cross, Ink.POLE);
    }

    /** A lozenge. */
    static void axis(Graphics2D canvas, Point2D at) {
        Path2D lozenge = new Path2D.Double();
        lozenge.moveTo(at.getX(), at.getY() - 13);
        lozenge.lineTo(at.getX() + 10, at.getY());
        lozenge.lineTo(at.getX(), at.getY() + 13);
        lozenge.lineTo(at.getX() - 10, at.getY());
        lozenge.closePath();
        canvas.setColor(Ink.SHADE);
        canvas.setStroke(new BasicStroke(LINE + 4));
        canvas.draw(lozenge);
        canvas.setColor(Ink.AXIS);
        canvas.fill(lozenge);
    }

    /** A broad arrowhead. */
    static void arrow(Graphics2D canvas, Point2D tip, double direction, Color colour) {
        Path2D head = new Path2D.Double();
        head.moveTo(0, 0);
        head.lineTo(-34, -20);
        head.lineTo(-24, 0);
        head.lineTo(-34, 20);
        head.closePath();
        AffineTransform place = AffineTransform.getTranslateInstance(tip.getX(), tip.getY());
        place.rotate(direction);
        canvas.setColor(colour);
        canvas.fill(place.createTransformedShape(head));
    }

    private static void outline(Graphics2D canvas, Shape shape, Color colour) {
        canvas.setStroke(new BasicStroke(LINE + 3, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        canvas.setColor(Ink.SHADE);
        canvas.draw(shape);
        canvas.setStroke(new BasicStroke(LINE, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        canvas.setColor(colour);
        canvas.draw(shape);
    }
}
