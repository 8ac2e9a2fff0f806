package polewright.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** A drawing parsed back from its SVG text, as a viewer would. */
public record DrawnSvg(Element root) {
    /** One text and its box: from the baseline up by the height of a capital letter. */
    public record Lettered(String content, double size, Rectangle2D box) {}

    public static DrawnSvg parse(String svg) {
        try {
            return new DrawnSvg(DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(svg)))
                    .getDocumentElement());
        } catch (Exception e) {
            throw new AssertionError("not well-formed XML", e);
        }
    }

    public Rectangle2D paper() {
        List<Double> box = numbers(root.getAttribute("viewBox"));
        return new Rectangle2D.Double(box.get(0), box.get(1), box.get(2), box.get(3));
    }

    public Line2D line(String name) {
        return elements(root, "line").stream()
                .filter(e -> e.getAttribute("class").equals(name))
                .map(DrawnSvg::toLine)
                .findFirst()
                .orElseThrow();
    }

    public List<Line2D> lines(String name) {
        return elements(root, "line").stream()
                .filter(e -> e.getAttribute("class").equals(name))
                .map(DrawnSvg::toLine)
                .toList();
    }

    /** Stroke widths of the lines with that class. */
    public List<Double> strokeWidths(String name) {
        return elements(root, "line").stream()
                .filter(e -> e.getAttribute("class").equals(name))
                .map(e -> number(e, "stroke-width"))
                .toList();
    }

    /** Every group with that class, as a drawing of its own. */
    public List<DrawnSvg> parts(String name) {
        return groups(name).stream().map(DrawnSvg::new).toList();
    }

    /** Every group whose classes include that one, as a drawing of its own. */
    public List<DrawnSvg> partsOf(String name) {
        return elements(root, "g").stream()
                .filter(e -> List.of(e.getAttribute("class").split(" ", -1)).contains(name))
                .map(DrawnSvg::new)
                .toList();
    }

    public List<String> classes() {
        return List.of(root.getAttribute("class").split(" ", -1));
    }

    /** The clipped areas, each as a drawing of its own. */
    public List<DrawnSvg> windows() {
        return elements(root, "svg").stream().map(DrawnSvg::new).toList();
    }

    /** The box around all circles and all corners of polygons, lines and polylines. */
    public Rectangle2D extent() {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (String tag : List.of("polygon", "polyline")) {
            for (Element e : elements(root, tag)) {
                List<Double> xy = numbers(e.getAttribute("points"));
                for (int i = 0; i < xy.size(); i += 2) {
                    x.add(xy.get(i));
                    y.add(xy.get(i + 1));
                }
            }
        }
        for (Element e : elements(root, "line")) {
            x.addAll(List.of(number(e, "x1"), number(e, "x2")));
            y.addAll(List.of(number(e, "y1"), number(e, "y2")));
        }
        for (Element e : elements(root, "circle")) {
            x.addAll(List.of(number(e, "cx") - number(e, "r"), number(e, "cx") + number(e, "r")));
            y.addAll(List.of(number(e, "cy") - number(e, "r"), number(e, "cy") + number(e, "r")));
        }
        Rectangle2D box = new Rectangle2D.Double(x.get(0), y.get(0), 0, 0);
        for (int i = 1; i < x.size(); i++) {
            box.add(x.get(i), y.get(i));
        }
        return box;
    }

    /** From the first to the last corner of the first polyline. */
    public Line2D firstToLastOfStroke() {
        List<Double> xy = numbers(elements(root, "polyline").get(0).getAttribute("points"));
        int last = xy.size() - 2;
        return new Line2D.Double(xy.get(0), xy.get(1), xy.get(last), xy.get(last + 1));
    }

    public List<Lettered> texts() {
        return elements(root, "text").stream().map(DrawnSvg::toLettered).toList();
    }

    /** The closed outlines in the groups with that class. */
    public List<List<Line2D>> outlines(String group) {
        return groups(group).stream()
                .flatMap(g -> elements(g, "polygon").stream())
                .map(DrawnSvg::toOutline)
                .toList();
    }

    /** All straight edges in the groups with that class. */
    public List<Line2D> edges(String group) {
        List<Line2D> edges = new ArrayList<>();
        outlines(group).forEach(edges::addAll);
        groups(group).forEach(g -> elements(g, "line").forEach(e -> edges.add(toLine(e))));
        return edges;
    }

    /** On a phone's page: every text large enough, on the paper, and none over another. */
    public void assertLegible() {
        assertThat(paper().getWidth()).isEqualTo(360);
        assertTextsApart();
        assertThat(texts()).allSatisfy(text -> assertThat(text.size()).isGreaterThanOrEqualTo(14));
    }

    /** Every text is on the paper, and none is over another. */
    public void assertTextsApart() {
        List<Lettered> texts = texts();
        assertThat(texts).isNotEmpty();
        for (int i = 0; i < texts.size(); i++) {
            Lettered text = texts.get(i);
            assertThat(paper().contains(text.box())).as(text.toString()).isTrue();
            for (Lettered other : texts.subList(i + 1, texts.size())) {
                assertThat(text.box().intersects(other.box()))
                        .as(text + " over " + other)
                        .isFalse();
            }
        }
    }

    /** The position of a clipped area on the paper. */
    public Rectangle2D place() {
        return new Rectangle2D.Double(
                number(root, "x"), number(root, "y"), number(root, "width"), number(root, "height"));
    }

    private List<Element> groups(String name) {
        return elements(root, "g").stream()
                .filter(e -> e.getAttribute("class").equals(name))
                .toList();
    }

    private static Lettered toLettered(Element e) {
        double size = number(e, "font-size");
        double width = Lettering.width(e.getTextContent(), size);
        double left = switch (e.getAttribute("text-anchor")) {
            case "start" -> number(e, "x");
            case "middle" -> number(e, "x") - width / 2;
            case "end" -> number(e, "x") - width;
            default -> throw new AssertionError("anchor " + e.getAttribute("text-anchor"));
        };
        double height = 0.72 * size;
        return new Lettered(
                e.getTextContent(), size, new Rectangle2D.Double(left, number(e, "y") - height, width, height));
    }

    private static Line2D toLine(Element e) {
        return new Line2D.Double(number(e, "x1"), number(e, "y1"), number(e, "x2"), number(e, "y2"));
    }

    private static List<Line2D> toOutline(Element e) {
        List<Double> xy = numbers(e.getAttribute("points"));
        List<Line2D> edges = new ArrayList<>();
        for (int i = 0; i < xy.size(); i += 2) {
            int j = (i + 2) % xy.size();
            edges.add(new Line2D.Double(xy.get(i), xy.get(i + 1), xy.get(j), xy.get(j + 1)));
        }
        return edges;
    }

    private static List<Double> numbers(String text) {
        List<Double> numbers = new ArrayList<>();
        for (String part : text.split("[ ,]+", -1)) {
            numbers.add(Double.valueOf(part));
        }
        return numbers;
    }

    private static double number(Element e, String attribute) {
        return Double.parseDouble(e.getAttribute(attribute));
    }

    private static List<Element> elements(Element under, String tag) {
        NodeList nodes = under.getElementsByTagName(tag);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }
}
