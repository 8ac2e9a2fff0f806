package polewright.operations.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.Frame;
import polewright.image.match.StarPair;
import polewright.image.star.FoundStar;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;

/** Draws a placed frame: rings for identified stars, ticks for the others, the pole, the axis, and a legend. */
public final class FramePicture {
    private static final int MOST_RINGS = 220;
    private static final int MOST_NAMES = 10;
    // Labels must not cover their light.
    private static final int BRIGHT_STARS = 12;
    private static final int MARGIN = 22;
    private static final Font NAME = new Font(Font.SANS_SERIF, Font.PLAIN, 28);
    private static final Font MARK = new Font(Font.SANS_SERIF, Font.BOLD, 32);
    private static final double OFF_FRAME_INSET = 44;

    private final PlacedFrame placed;
    private final Sheet sheet;
    private final View view;
    private final List<PointMark> marks;
    private final BufferedImage image;
    private final Graphics2D canvas;
    private final Labels labels;

    private FramePicture(Frame frame, PlacedFrame placed, List<PointMark> marks, Sheet sheet, int captionHeight) {
        this.placed = placed;
        this.marks = marks;
        this.sheet = sheet;
        this.view = new View(placed, sheet);
        this.image = new BufferedImage(sheet.width(), sheet.height() + captionHeight, BufferedImage.TYPE_INT_RGB);
        this.canvas = image.createGraphics();
        canvas.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        canvas.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        canvas.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        canvas.drawImage(sheet.grey(frame), 0, 0, null);
        this.labels = new Labels(canvas, new Rectangle2D.Double(6, 6, sheet.width() - 12.0, sheet.height() - 12.0));
    }

    /**
     * The bytes of a PNG.
     *
     * @param frame its pixels
     * @param marks the pole, the axis
     * @param named stars that have a name
     * @param words the caption, one line each
     */
    public static byte[] png(
            Frame frame, PlacedFrame placed, List<PointMark> marks, List<NamedStar> named, List<String> words) {
        Sheet sheet = Sheet.of(frame.width(), frame.height(), placed.rows());
        Caption caption = Caption.of(sheet, marks.stream().map(PointMark::kind).toList(), words);
        FramePicture picture = new FramePicture(frame, placed, marks, sheet, caption.height());
        picture.draw(named);
        caption.draw(picture.canvas);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture.image, "png", bytes);
        } catch (IOException e) {
            throw new UncheckedIOException("a picture was not written to memory", e);
        } finally {
            picture.canvas.dispose();
        }
        return bytes.toByteArray();
    }

    private void draw(List<NamedStar> named) {
        canvas.setClip(0, 0, sheet.width(), sheet.height());
        stars();
        lineToPole();
        north();
        marks.forEach(this::glyph);
        marks.forEach(this::label);
        names(named);
        canvas.setClip(null);
    }

    private void stars() {
        Set<FoundStar> known = new HashSet<>();
        placed.match().pairs().forEach(pair -> known.add(pair.found()));
        int ticks = 0;
        for (FoundStar star : placed.stars().stars()) {
            if (!known.contains(star) && ticks++ < MOST_RINGS) {
                Glyphs.unknownStar(canvas, sheet.point(star.x(), star.y()));
            }
        }
        List<StarPair> pairs = placed.match().pairs();
        for (StarPair pair : pairs.subList(0, Math.min(BRIGHT_STARS, pairs.size()))) {
            Point2D at = sheet.point(pair.found().x(), pair.found().y());
            labels.keepOff(new Rectangle2D.Double(at.getX() - 11, at.getY() - 11, 22, 22));
        }
        for (StarPair pair : pairs.subList(0, Math.min(MOST_RINGS, pairs.size()))) {
            Glyphs.knownStar(canvas, sheet.point(pair.found().x(), pair.found().y()), ringRadius(pair, pairs.get(0)));
        }
    }

    private static double ringRadius(StarPair pair, StarPair brightest) {
        double fainterBy = Math.max(
                0, 2.5 * Math.log10(brightest.found().flux() / pair.found().flux()));
        return Math.max(7, 17 - 2 * fainterBy);
    }

    private void names(List<NamedStar> named) {
        int written = 0;
        for (NamedStar star : named) {
            if (written >= MOST_NAMES) {
                return;
            }
            Optional<StarPair> pair = view.pairOf(star);
            if (pair.isPresent()) {
                Point2D point =
                        sheet.point(pair.get().found().x(), pair.get().found().y());
                written += labels.placeNextTo(point, star.label(), NAME, Ink.KNOWN) ? 1 : 0;
            }
        }
    }

    /** A thin line from the axis to the pole: the direction in which the screws have to move it. */
    private void lineToPole() {
        Optional<Point2D> from = point(PointMark.Kind.AXIS);
        Optional<Point2D> to = point(PointMark.Kind.POLE);
        if (from.isPresent() && to.isPresent()) {
            canvas.setStroke(
                    new BasicStroke(3, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 1, new float[] {2, 12}, 0));
            canvas.setColor(Ink.AXIS);
            canvas.draw(new Line2D.Double(from.get(), to.get()));
        }
    }

    private Optional<Point2D> point(PointMark.Kind kind) {
        return marks.stream()
                .filter(mark -> mark.kind() == kind)
                .findFirst()
                .flatMap(mark -> view.point(mark.direction()));
    }

    private void glyph(PointMark mark) {
        Optional<Point2D> point = onTheFrame(mark);
        if (point.isPresent()) {
            outline(mark);
            if (mark.kind() == PointMark.Kind.POLE) {
                Glyphs.pole(canvas, point.get());
            } else {
                Glyphs.axis(canvas, point.get());
            }
            keepOff(point.get());
        } else {
            View.Edge edge = view.edge(mark.direction(), OFF_FRAME_INSET);
            Glyphs.arrow(canvas, edge.tip(), edge.direction(), Ink.of(mark.kind()));
            keepOff(edge.tip());
        }
    }

    private void label(PointMark mark) {
        Optional<Point2D> point = onTheFrame(mark);
        Color colour = Ink.of(mark.kind());
        if (point.isPresent()) {
            double x = point.get().getX();
            double y = point.get().getY();
            labels.placeNextToAny(
                    List.of(
                            new Point2D.Double(x + 22, y),
                            new Point2D.Double(x - 22, y),
                            new Point2D.Double(x, y + 30),
                            new Point2D.Double(x, y - 30)),
                    mark.label(),
                    MARK,
                    colour);
            return;
        }
        View.Edge edge = view.edge(mark.direction(), OFF_FRAME_INSET);
        Angle away = new Angle(Vector3D.angle(placed.match().plate().centre(), mark.direction()));
        labels.placeNextToAny(
                IntStream.of(40, 90, 140, 190).mapToObj(edge::inward).toList(),
                mark.label() + ", " + Caption.size(away) + " from the centre",
                MARK,
                colour);
    }

    private void keepOff(Point2D point) {
        labels.keepOff(new Rectangle2D.Double(point.getX() - 24, point.getY() - 24, 48, 48));
    }

    private Optional<Point2D> onTheFrame(PointMark mark) {
        return view.point(mark.direction()).filter(sheet::holds);
    }

    private void outline(PointMark mark) {
        Path2D region = new Path2D.Double();
        for (Vector3D direction : mark.outline()) {
            Optional<Point2D> corner = view.point(direction);
            if (corner.isEmpty()) {
                return;
            }
            if (region.getCurrentPoint() == null) {
                region.moveTo(corner.get().getX(), corner.get().getY());
            } else {
                region.lineTo(corner.get().getX(), corner.get().getY());
            }
        }
        if (region.getCurrentPoint() != null) {
            region.closePath();
            canvas.setStroke(new BasicStroke(3));
            canvas.setColor(Ink.AXIS);
            canvas.draw(region);
        }
    }

    /** Two short arrows in a corner, toward north and east. */
    private void north() {
        Point2D foot = new Point2D.Double(MARGIN + 56, sheet.height() - MARGIN - 56.0);
        canvas.setColor(Ink.SHADE);
        canvas.fill(new Ellipse2D.Double(foot.getX() - 76, foot.getY() - 76, 152, 152));
        direction(foot, view.north(), "N");
        direction(foot, view.east(), "E");
        labels.keepOff(new Rectangle2D.Double(foot.getX() - 76, foot.getY() - 76, 152, 152));
    }

    private void direction(Point2D foot, Vector3D toward, String letter) {
        Point2D way = view.way(toward);
        double length = way.distance(0, 0);
        double dx = way.getX() / length;
        double dy = way.getY() / length;
        canvas.setColor(Ink.WORDS);
        canvas.setStroke(new BasicStroke(3, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        canvas.draw(new Line2D.Double(foot, new Point2D.Double(foot.getX() + 36 * dx, foot.getY() + 36 * dy)));
        canvas.setFont(NAME);
        int half = canvas.getFontMetrics().stringWidth(letter) / 2;
        canvas.drawString(letter, (float) (foot.getX() + 56 * dx - half), (float) (foot.getY() + 56 * dy + 9));
    }
}
