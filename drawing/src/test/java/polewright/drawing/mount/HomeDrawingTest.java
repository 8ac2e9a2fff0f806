package polewright.drawing.mount;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Line2D;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import polewright.drawing.DrawnSvg;
import polewright.drawing.DrawnSvg.Lettered;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.mount.rig.MountKind;
import polewright.sky.place.Site;

@Tag("slow")
class HomeDrawingTest {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);

    static Stream<Arguments> everyKindAtManyLatitudes() {
        List<Arguments> cases = new ArrayList<>();
        for (MountKind kind : MountKind.values()) {
            for (double latitude = -90; latitude <= 90; latitude += 2.5) {
                cases.add(Arguments.of(kind, latitude));
            }
            cases.add(Arguments.of(kind, 54.6));
            cases.add(Arguments.of(kind, -43.95));
        }
        return cases.stream();
    }

    @ParameterizedTest
    @MethodSource("everyKindAtManyLatitudes")
    void poleIsAtTheLatitude_aboveTheLevelLine(MountKind kind, double latitude) {
        DrawnSvg drawn = drawn(kind, latitude);

        Line2D axis = drawn.line(kind.hasPolarAxis() ? "polar-axis" : "pole-direction");
        Line2D level = drawn.line("level");
        Line2D plumb = drawn.line("plumb");

        double rise = Math.toDegrees(Math.atan2(axis.getY1() - axis.getY2(), axis.getX2() - axis.getX1()));
        // Coordinates are written to 0.01 units on a line of at least 125.
        assertThat(rise).isEqualTo(Math.abs(latitude), within(0.01));
        assertThat(level.getY1()).isEqualTo(level.getY2());
        assertThat(plumb.getX1()).isEqualTo(plumb.getX2());
    }

    @ParameterizedTest
    @MethodSource("everyKindAtManyLatitudes")
    void latitudeIsShown_andItsComplement_ifThereIsAnAxisToSet(MountKind kind, double latitude) {
        List<String> texts =
                drawn(kind, latitude).texts().stream().map(Lettered::content).toList();
        long tenths = Math.round(Math.abs(latitude) * 10);

        assertThat(texts).contains(tenths / 10 + "." + tenths % 10 + "°");
        if (kind.hasPolarAxis()) {
            assertThat(texts).contains((900 - tenths) / 10 + "." + (900 - tenths) % 10 + "°");
        }
        assertThat(texts)
                .contains(latitude >= 0 ? "north" : "south", "celestial", "pole")
                .contains(latitude >= 0 ? "Seen from the east, facing west." : "Seen from the west, facing east.");
    }

    @ParameterizedTest
    @MethodSource("everyKindAtManyLatitudes")
    void texts_areOnThePaper_doNotOverlap_andAreLegibleOnAPhone(MountKind kind, double latitude) {
        drawn(kind, latitude).assertLegible();
    }

    @ParameterizedTest
    @MethodSource("everyKindAtManyLatitudes")
    void axisCrossesNoText(MountKind kind, double latitude) {
        DrawnSvg drawn = drawn(kind, latitude);
        Line2D axis = drawn.line(kind.hasPolarAxis() ? "polar-axis" : "pole-direction");

        assertThat(drawn.texts()).noneMatch(text -> axis.intersects(text.box()));
    }

    @ParameterizedTest
    @MethodSource("everyKindAtManyLatitudes")
    void partsThatTiltWithTheAxis_touchNeitherStandNorGround(MountKind kind, double latitude) {
        DrawnSvg drawn = drawn(kind, latitude);
        double ground = drawn.line("ground").getY1();

        for (List<Line2D> outline : drawn.outlines(MountSketch.TURNING)) {
            for (Line2D edge : outline) {
                assertThat(Math.max(edge.getY1(), edge.getY2())).isLessThan(ground - 10);
                for (Line2D obstacle : drawn.edges(MountSketch.STAND)) {
                    assertThat(edge.intersectsLine(obstacle)).isFalse();
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = MountKind.class,
            names = {"FORK_ON_WEDGE", "GERMAN", "TRACKER"})
    void southernDrawing_isTheNorthernOneFromTheOtherSide(MountKind kind) {
        for (double latitude : new double[] {5, 30, 54.6, 70, 85}) {
            String south = HomeDrawing.svg(kind, Site.ofDegrees(-latitude, 0, 0), Palette.LIGHT);
            String north = HomeDrawing.svg(kind, Site.ofDegrees(latitude, 0, 0), Palette.LIGHT);

            assertThat(swapped(south)).isEqualTo(north);
            assertThat(south).isNotEqualTo(north);
        }
    }

    @Test
    void uprightTube_facesNorth_awayFromTheSouthernPole() {
        double north = meanX(drawn(MountKind.FORK_UPRIGHT, 43.95));
        double south = meanX(drawn(MountKind.FORK_UPRIGHT, -43.95));
        double plumb = drawn(MountKind.FORK_UPRIGHT, 43.95).line("plumb").getX1();

        assertThat(north).isGreaterThan(plumb);
        assertThat(south).isEqualTo(2 * plumb - north, within(0.01));
    }

    @ParameterizedTest
    @EnumSource(MountKind.class)
    void titleAndDescription_areThereForScreenReaders(MountKind kind) {
        Element root = drawn(kind, 54.6).root();

        assertThat(root.getAttribute("role")).isEqualTo("img");
        assertThat(root.getElementsByTagName("title").item(0).getTextContent())
                .isEqualTo("Home position: " + kind.words() + ", latitude 54.6° north");
        assertThat(root.getElementsByTagName("desc").item(0).getTextContent())
                .startsWith("Side view. Seen from the east, facing west, the north celestial pole to the right. ")
                .contains("54.6° above level");
    }

    @Test
    void palette_changesOnlyColours() {
        String light = HomeDrawing.svg(MountKind.GERMAN, LARKFELL, Palette.LIGHT);
        String dark = HomeDrawing.svg(MountKind.GERMAN, LARKFELL, Palette.DARK);

        assertThat(dark).isNotEqualTo(light).contains(Palette.DARK.background());
        assertThat(dark.replaceAll("#[0-9a-f]{6}", "#")).isEqualTo(light.replaceAll("#[0-9a-f]{6}", "#"));
    }

    @Test
    void specialXmlCharacters_areEscaped() {
        assertThat(Svg.escaped("a < b & \"c\" > d")).isEqualTo("a &lt; b &amp; &quot;c&quot; &gt; d");
    }

    /** The picture in the documents matches the code; {@code -Dpictures=write} updates it. */
    @Test
    void committedPicture_matchesTheCode() throws Exception {
        Path picture = Path.of("..", "docs", "pictures", "home-fork-on-wedge.svg");
        String drawn = HomeDrawing.svg(MountKind.FORK_ON_WEDGE, LARKFELL, Palette.LIGHT);
        if ("write".equals(System.getProperty("pictures"))) {
            Files.createDirectories(picture.getParent());
            Files.writeString(picture, drawn);
        }

        assertThat(Files.readString(picture)).isEqualTo(drawn);
    }

    private static DrawnSvg drawn(MountKind kind, double latitude) {
        return DrawnSvg.parse(HomeDrawing.svg(kind, Site.ofDegrees(latitude, 0, 0), Palette.DARK));
    }

    private static double meanX(DrawnSvg drawn) {
        return drawn.outlines(MountSketch.TURNING).stream()
                .flatMap(List::stream)
                .mapToDouble(Line2D::getX1)
                .average()
                .orElseThrow();
    }

    static String swapped(String text) {
        return text.replaceAll("\\bsouth\\b", "~")
                .replaceAll("\\bnorth\\b", "south")
                .replaceAll("~", "north")
                .replaceAll("\\bwest\\b", "~")
                .replaceAll("\\beast\\b", "west")
                .replaceAll("~", "east");
    }
}
