package polewright.drawing.mount;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
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
import polewright.drawing.DrawnSvg;
import polewright.drawing.DrawnSvg.Lettered;
import polewright.drawing.Palette;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.ScrewSense;
import polewright.sky.InputRefused;
import polewright.sky.place.Site;

@Tag("slow")
class WedgeDrawingTest {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final ScrewToTurn UP =
            new ScrewToTurn(ScrewSense.RAISES, 1.75, 0, false, List.of("1 3/4 turns clockwise"));
    private static final ScrewToTurn LEFT_AND_BACK = new ScrewToTurn(
            ScrewSense.RIGHT, -1.5, 0.5, false, List.of("2 turns counter-clockwise,", "then back 1/2 turn clockwise"));

    static Stream<Arguments> everyKindAtManyLatitudes() {
        List<Arguments> cases = new ArrayList<>();
        for (MountKind kind : MountKind.values()) {
            if (kind.hasPolarAxis()) {
                for (double latitude = -84; latitude <= 84; latitude += 4) {
                    cases.add(Arguments.of(kind, latitude));
                }
            }
        }
        return cases.stream();
    }

    @ParameterizedTest
    @MethodSource("everyKindAtManyLatitudes")
    void axisIsInclinedByTheLatitude_andEverythingIsOnThePaper(MountKind kind, double latitude) {
        DrawnSvg drawn = drawn(kind, latitude, UP, LEFT_AND_BACK);
        Line2D axis = drawn.line("side-axis");

        double rise = Math.toDegrees(Math.atan2(axis.getY1() - axis.getY2(), axis.getX2() - axis.getX1()));
        assertThat(rise).isEqualTo(Math.abs(latitude), within(0.02));
        for (String part : List.of("altitude-view", "azimuth-view", "altitude-way", "azimuth-way")) {
            assertThat(drawn.paper().contains(drawn.parts(part).get(0).extent()))
                    .as(part)
                    .isTrue();
        }
    }

    @ParameterizedTest
    @MethodSource("everyKindAtManyLatitudes")
    void texts_areOnThePaper_andDoNotOverlapEachOtherOrTheMount(MountKind kind, double latitude) {
        for (List<ScrewToTurn> turns :
                List.of(List.of(UP, LEFT_AND_BACK), List.of(LEFT_AND_BACK, UP), List.of(UP), List.<ScrewToTurn>of())) {
            DrawnSvg drawn = drawn(kind, latitude, turns.toArray(ScrewToTurn[]::new));
            List<Line2D> mount = new ArrayList<>(drawn.edges("altitude-view"));
            mount.addAll(drawn.edges("azimuth-view"));
            drawn.assertLegible();
            assertThat(drawn.texts())
                    .allSatisfy(text ->
                            assertThat(mount).as(text.toString()).noneMatch(edge -> edge.intersects(text.box())));
        }
    }

    @Test
    void arrows_showTheMovementOfTheAxis() {
        for (ScrewSense sense : ScrewSense.values()) {
            for (double turns : new double[] {1, -1}) {
                DrawnSvg drawn = drawn(
                        MountKind.FORK_ON_WEDGE, 54.6, new ScrewToTurn(sense, turns, 0, false, List.of("1 turn")));
                boolean forward = turns * sense.sign() > 0;
                if (sense.isAzimuth()) {
                    Line2D way = drawn.parts("azimuth-way").get(0).firstToLastOfStroke();
                    assertThat(way.getX2() > way.getX1()).isEqualTo(forward);
                    assertThat(contents(drawn)).contains(forward ? "right (east)" : "left (west)");
                } else {
                    Line2D way = drawn.parts("altitude-way").get(0).firstToLastOfStroke();
                    assertThat(way.getY2() < way.getY1()).isEqualTo(forward);
                    assertThat(contents(drawn)).contains("the axis goes " + (forward ? "up" : "down"));
                }
            }
        }
    }

    @Test
    void arrowsAroundTheHead_showTheDirectionOfEachLeg() {
        DrawnSvg turn = drawn(MountKind.FORK_ON_WEDGE, 54.6, LEFT_AND_BACK)
                .parts("azimuth-turn")
                .get(0);

        Line2D first = turn.parts("counter-clockwise").get(0).firstToLastOfStroke();
        Line2D back = turn.parts("clockwise").get(0).firstToLastOfStroke();
        assertThat(first.getX2()).isLessThan(first.getX1());
        assertThat(back.getX2()).isGreaterThan(back.getX1());
        assertThat(back.getX1()).isGreaterThan(first.getX1());
        assertThat(contents(drawn(MountKind.FORK_ON_WEDGE, 54.6, LEFT_AND_BACK)))
                .containsSubsequence("2 turns counter-clockwise,", "then back 1/2 turn", "clockwise");
    }

    @Test
    void onlyTheScrewToTurn_isHighlighted() {
        String one = WedgeDrawing.svg(MountKind.FORK_ON_WEDGE, LARKFELL, List.of(UP), Palette.LIGHT);
        List<String> screws =
                one.lines().filter(line -> line.contains("class=\"screw\"")).toList();

        assertThat(screws).hasSize(2);
        assertThat(screws.get(0)).contains(Palette.LIGHT.axis());
        assertThat(screws.get(1)).contains(Palette.LIGHT.ink()).doesNotContain(Palette.LIGHT.axis());
        assertThat(contents(DrawnSvg.parse(one))).contains("Leave the azimuth screw alone.");
    }

    @Test
    void screwToTurnFirst_isDrawnFirst() {
        List<String> altitudeFirst = contents(drawn(MountKind.FORK_ON_WEDGE, 54.6, UP, LEFT_AND_BACK));
        List<String> azimuthFirst = contents(drawn(MountKind.FORK_ON_WEDGE, 54.6, LEFT_AND_BACK, UP));

        assertThat(altitudeFirst).containsSubsequence("1. Altitude screw", "2. Azimuth screw");
        assertThat(azimuthFirst).containsSubsequence("1. Azimuth screw", "2. Altitude screw");
    }

    @ParameterizedTest
    @EnumSource(
            value = MountKind.class,
            names = {"FORK_ON_WEDGE", "GERMAN", "TRACKER"})
    void southernDrawing_isTheNorthernOneFromTheOtherSide(MountKind kind) {
        String south =
                WedgeDrawing.svg(kind, Site.ofDegrees(-43.95, 170.40, 710), List.of(UP, LEFT_AND_BACK), Palette.DARK);
        String north =
                WedgeDrawing.svg(kind, Site.ofDegrees(43.95, 170.40, 710), List.of(UP, LEFT_AND_BACK), Palette.DARK);

        assertThat(HomeDrawingTest.swapped(south)).isEqualTo(north);
        assertThat(south).isNotEqualTo(north).contains("left (east)");
    }

    @Test
    void cautionToHoldTheWeight_isShown() {
        assertThat(String.join(" ", contents(drawn(MountKind.FORK_ON_WEDGE, 54.6, UP))))
                .contains("CARE: hold the fork's weight before you loosen the tilt clamp.");
        assertThat(String.join(" ", contents(drawn(MountKind.GERMAN, 54.6, UP))))
                .contains("CARE: hold the mount's weight before you loosen the tilt clamp.");
    }

    @Test
    void titleAndDescription_areThereForScreenReaders() {
        String svg = WedgeDrawing.svg(MountKind.FORK_ON_WEDGE, LARKFELL, List.of(UP, LEFT_AND_BACK), Palette.LIGHT);

        assertThat(svg)
                .contains("<title>First the altitude screw: fork on a wedge</title>")
                .contains("Altitude screw: 1 3/4 turns clockwise; the axis goes up.")
                .contains("then back 1/2 turn clockwise; the axis goes left (west).");
    }

    @Test
    void palette_changesOnlyColours() {
        String light = WedgeDrawing.svg(MountKind.TRACKER, LARKFELL, List.of(UP), Palette.LIGHT);
        String dark = WedgeDrawing.svg(MountKind.TRACKER, LARKFELL, List.of(UP), Palette.DARK);

        assertThat(dark.replaceAll("#[0-9a-f]{6}", "#")).isEqualTo(light.replaceAll("#[0-9a-f]{6}", "#"));
    }

    @Test
    void uprightFork_hasNoAdjustmentScrews() {
        assertThatThrownBy(() -> WedgeDrawing.svg(MountKind.FORK_UPRIGHT, LARKFELL, List.of(), Palette.LIGHT))
                .isInstanceOf(InputRefused.class)
                .hasMessageContaining("has no polar-axis screws");
    }

    /** The picture in the documents matches the code; {@code -Dpictures=write} updates it. */
    @Test
    void committedPicture_matchesTheCode() throws Exception {
        Path picture = Path.of("..", "docs", "pictures", "wedge.svg");
        String drawn = WedgeDrawing.svg(MountKind.FORK_ON_WEDGE, LARKFELL, List.of(UP, LEFT_AND_BACK), Palette.LIGHT);
        if ("write".equals(System.getProperty("pictures"))) {
            Files.createDirectories(picture.getParent());
            Files.writeString(picture, drawn);
        }

        assertThat(Files.readString(picture)).isEqualTo(drawn);
    }

    private static DrawnSvg drawn(MountKind kind, double latitude, ScrewToTurn... turns) {
        return DrawnSvg.parse(WedgeDrawing.svg(kind, Site.ofDegrees(latitude, 0, 0), List.of(turns), Palette.LIGHT));
    }

    private static List<String> contents(DrawnSvg drawn) {
        return drawn.texts().stream().map(Lettered::content).toList();
    }
}
