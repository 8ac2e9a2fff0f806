package polewright.operations.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.font.TextLayout;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.Arrays;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Canvas;
import polewright.drawing.Palette;
import polewright.drawing.Svg.Anchor;
import polewright.drawing.Svg.Look;
import polewright.operations.input.NumberInput;

/** Draws on pixels what {@code Svg} writes as text. */
final class PixelCanvas implements Canvas {
    private static final float HALO = 4;

    private final Graphics2D graphics;
    private final Palette palette;

    PixelCanvas(Graphics2D graphics, Palette palette) {
        this.graphics = graphics;
        this.palette = palette;
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    @Override
    public void open(String name) {
        // Pixels have no groups.
    }

    @Override
    public void close() {
        // Pixels have no groups.
    }

    @Override
    public void line(String name, Look look, Vector2D from, Vector2D to) {
        draw(look, new Line2D.Double(from.getX(), from.getY(), to.getX(), to.getY()));
    }

    @Override
    public void polygon(Look look, Vector2D... corners) {
        Path2D path = new Path2D.Double();
        path.moveTo(corners[0].getX(), corners[0].getY());
        for (Vector2D corner : Arrays.asList(corners).subList(1, corners.length)) {
            path.lineTo(corner.getX(), corner.getY());
        }
        path.closePath();
        draw(look, path);
    }

    @Override
    public void circle(Look look, Vector2D centre, double radius) {
        draw(look, new Ellipse2D.Double(centre.getX() - radius, centre.getY() - radius, 2 * radius, 2 * radius));
    }

    @Override
    public void text(Vector2D at, Anchor anchor, double size, String colour, String content) {
        Font font = new Font(Font.SANS_SERIF, Font.PLAIN, 1).deriveFont((float) size);
        TextLayout layout = new TextLayout(content, font, graphics.getFontRenderContext());
        double share = anchor == Anchor.START ? 0 : anchor == Anchor.MIDDLE ? 0.5 : 1;
        Shape letters = layout.getOutline(
                AffineTransform.getTranslateInstance(at.getX() - share * layout.getAdvance(), at.getY()));
        graphics.setColor(Color.decode(palette.background()));
        graphics.setStroke(new BasicStroke(HALO, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        graphics.draw(letters);
        graphics.setColor(Color.decode(colour));
        graphics.fill(letters);
    }

    private void draw(Look look, Shape shape) {
        if (!look.fill().equals("none")) {
            graphics.setColor(Color.decode(look.fill()));
            graphics.fill(shape);
        }
        if (!look.stroke().equals("none")) {
            graphics.setColor(Color.decode(look.stroke()));
            graphics.setStroke(stroke(look));
            graphics.draw(shape);
        }
    }

    private static BasicStroke stroke(Look look) {
        float width = (float) look.width();
        if (look.dash().isEmpty()) {
            return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
        }
        String[] lengths = look.dash().split(" ", -1);
        float[] dash = new float[lengths.length];
        for (int i = 0; i < dash.length; i++) {
            dash[i] = (float) NumberInput.of(lengths[i]);
        }
        return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 1, dash, 0);
    }
}
