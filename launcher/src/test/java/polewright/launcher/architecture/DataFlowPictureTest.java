package polewright.launcher.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;
import static polewright.launcher.architecture.DataFlow.ACTION;
import static polewright.launcher.architecture.DataFlow.ADVICE;
import static polewright.launcher.architecture.DataFlow.ALLOWANCE;
import static polewright.launcher.architecture.DataFlow.EVENT;
import static polewright.launcher.architecture.DataFlow.FIX;
import static polewright.launcher.architecture.DataFlow.LOG;
import static polewright.launcher.architecture.DataFlow.PAGES;
import static polewright.launcher.architecture.DataFlow.REPORT;
import static polewright.launcher.architecture.DataFlow.RIG;
import static polewright.launcher.architecture.DataFlow.SIGHTING;
import static polewright.launcher.architecture.DataFlow.SITE;
import static polewright.launcher.architecture.DataFlow.TERMINAL;
import static polewright.launcher.architecture.DataFlow.WORK;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import polewright.launcher.GeneratedFile;
import polewright.launcher.architecture.DataFlow.Arrow;
import polewright.launcher.architecture.DataFlow.Maker;
import polewright.launcher.architecture.DataFlow.Node;

/**
 * The picture of the data flow in docs/design.md is drawn from {@link DataFlow}, whose arrows are checked against the code.
 * Run with {@code -Dpolewright.draw=true} to draw it again.
 */
class DataFlowPictureTest {
    private static final Path PICTURE = Path.of("../docs/pictures/data-flow.svg");

    private static final int WIDTH = 640;
    private static final int BOX_WIDTH = 132;
    private static final int BOX_HEIGHT = 46;
    private static final int ROW = 88;
    private static final int MARGIN = 20;

    /** A box of the picture: the centre of its upper edge. */
    private record Box(Node node, int x, int row) {
        int top() {
            return MARGIN + row * ROW;
        }

        int bottom() {
            return top() + BOX_HEIGHT;
        }
    }

    /** The faces are drawn twice: where something is entered, and where something is shown. */
    private static final List<Box> BOXES = List.of(
            new Box(TERMINAL, 243, 0),
            new Box(PAGES, 397, 0),
            new Box(ACTION, 320, 1),
            new Box(EVENT, 320, 2),
            new Box(LOG, 320, 3),
            new Box(SIGHTING, 88, 4),
            new Box(SITE, 243, 4),
            new Box(RIG, 397, 4),
            new Box(WORK, 552, 4),
            new Box(FIX, 165, 5),
            new Box(ALLOWANCE, 475, 5),
            new Box(ADVICE, 320, 6),
            new Box(REPORT, 320, 7),
            new Box(TERMINAL, 243, 8),
            new Box(PAGES, 397, 8));

    @Test
    void picture_isDrawnFromTheFlow() throws IOException {
        GeneratedFile.assertIsCurrent(PICTURE, drawn());
    }

    @Test
    void everyArrow_isInTheCode() {
        for (Arrow arrow : DataFlow.ARROWS) {
            boolean isTrue = arrow.by().isEmpty() ? isUsed(arrow) : DataFlow.leads(arrow);
            assertThat(isTrue)
                    .as(arrow.from().name() + " to " + arrow.to().name())
                    .isTrue();
        }
    }

    @Test
    void arrowThatIsNotInTheCode_isCaught() {
        Maker solved = new Maker(polewright.alignment.fix.FixSolver.class, "solve");
        assertThat(DataFlow.leads(new Arrow(WORK, FIX, List.of(solved)))).isFalse();
        assertThat(DataFlow.leads(new Arrow(SITE, ALLOWANCE, List.of(solved)))).isFalse();
        assertThat(DataFlow.leads(new Arrow(SITE, FIX, List.of(new Maker(solved.owner(), "guess")))))
                .isFalse();
        assertThat(isUsed(new Arrow(Node.in("sky", "sky"), ACTION, List.of()))).isFalse();
    }

    /** Data flows one way: what is known first does not depend on what is computed from it. */
    @Test
    void whatIsComputedLater_isUnknownEarlier() {
        Set<Node> core = Set.of(SIGHTING, SITE, RIG, WORK, FIX, ALLOWANCE, ADVICE);
        for (Arrow arrow : DataFlow.ARROWS) {
            if (core.contains(arrow.from()) && core.contains(arrow.to())) {
                noClasses()
                        .that()
                        .resideInAPackage(packageOf(arrow.from()))
                        .should()
                        .dependOnClassesThat()
                        .resideInAPackage(packageOf(arrow.to()))
                        .check(ProductionClasses.CLASSES);
            }
        }
    }

    private static String packageOf(Node node) {
        return node.type().map(Class::getPackageName).orElseGet(node::packageName);
    }

    /** Whether the package at one end of an arrow uses the other end. */
    private static boolean isUsed(Arrow arrow) {
        Node face = arrow.to().type().isPresent() ? arrow.from() : arrow.to();
        Node used = face.equals(arrow.from()) ? arrow.to() : arrow.from();
        Optional<Class<?>> type = used.type();
        return ProductionClasses.CLASSES.stream()
                .filter(user -> isIn(user.getPackageName(), face.packageName()))
                .flatMap(user -> user.getDirectDependenciesFromSelf().stream())
                .anyMatch(dependency -> type.map(
                                known -> dependency.getTargetClass().isEquivalentTo(known))
                        .orElseGet(() -> isIn(dependency.getTargetClass().getPackageName(), used.packageName())));
    }

    private static boolean isIn(String name, String module) {
        return name.equals(module) || name.startsWith(module + ".");
    }

    private static String drawn() {
        int height = 2 * MARGIN + BOXES.get(BOXES.size() - 1).row() * ROW + BOX_HEIGHT;
        StringBuilder svg = new StringBuilder(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\" font-size=\"15\">%n",
                WIDTH,
                height));
        svg.append("<title>How data flows, from what is entered to what is shown</title>\n");
        svg.append("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
        svg.append(
                "<defs><marker id=\"tip\" viewBox=\"0 0 8 8\" refX=\"8\" refY=\"4\" markerWidth=\"8\" markerHeight=\"8\""
                        + " orient=\"auto\"><path d=\"M0 0L8 4L0 8Z\" fill=\"#555555\"/></marker></defs>\n");
        DataFlow.ARROWS.forEach(arrow -> addArrow(svg, arrow));
        BOXES.forEach(box -> addBox(svg, box));
        return svg.append("</svg>\n").toString().replace("\r\n", "\n");
    }

    private static void addArrow(StringBuilder svg, Arrow arrow) {
        for (Box from : BOXES) {
            for (Box to : BOXES) {
                if (from.node().equals(arrow.from()) && to.node().equals(arrow.to()) && to.row() == from.row() + 1) {
                    svg.append(String.format(
                            Locale.ROOT,
                            "<line x1=\"%d\" y1=\"%d\" x2=\"%d\" y2=\"%d\" stroke=\"#555555\" marker-end=\"url(#tip)\"/>%n",
                            from.x(),
                            from.bottom(),
                            to.x(),
                            to.top()));
                }
            }
        }
    }

    private static void addBox(StringBuilder svg, Box box) {
        svg.append(String.format(
                Locale.ROOT,
                "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" rx=\"5\" fill=\"#eef2f5\" stroke=\"#33475b\"/>"
                        + "<text x=\"%d\" y=\"%d\" text-anchor=\"middle\" fill=\"#1b2733\">%s</text>"
                        + "<text x=\"%d\" y=\"%d\" text-anchor=\"middle\" fill=\"#4a5a6a\" font-size=\"12\">%s</text>%n",
                box.x() - BOX_WIDTH / 2,
                box.top(),
                BOX_WIDTH,
                BOX_HEIGHT,
                box.x(),
                box.top() + 20,
                box.node().name(),
                box.x(),
                box.top() + 37,
                box.node().code()));
    }
}
