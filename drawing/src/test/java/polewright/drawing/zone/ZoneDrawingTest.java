package polewright.drawing.zone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.allowance.LimitCause;
import polewright.drawing.DrawnSvg;
import polewright.drawing.DrawnSvg.Lettered;
import polewright.drawing.Palette;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.sky.angle.Angle;

@Tag("slow")
class ZoneDrawingTest {
    private static final Map<String, ZoneScene> SCENES = SampleScenes.all();

    static Stream<String> scenes() {
        return SCENES.keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void texts_areOnThePaper_doNotOverlap_andAreLegibleOnAPhone(String name) {
        drawn(scene(name)).assertLegible();
    }

    @Test
    void texts_areLegible_forAnyZone_withTheAxisAnywhere() {
        Random random = new Random(4);
        List<LimitCause> causes = List.of(LimitCause.values());
        for (int i = 0; i < 60; i++) {
            SampleZones.Rule[] rules = new SampleZones.Rule[1 + random.nextInt(7)];
            for (int k = 0; k < rules.length; k++) {
                LimitCause cause = causes.get(random.nextInt(causes.size()));
                double degrees = 360 * random.nextDouble();
                double size = Math.exp(2 * random.nextGaussian());
                rules[k] = SampleZones.Rule.ellipse(
                        "Item number " + (k + 1), cause, degrees, size, size * (0.1 + random.nextDouble()));
            }
            double spread = Math.exp(2 * random.nextGaussian());
            ZoneScene scene = ZoneScene.of(
                            SampleZones.zone(
                                    SampleScenes.place(random.nextGaussian(), 1).offset(), rules),
                            random.nextBoolean())
                    .withNow(
                            AxisOffset.ofArcminutes(spread * random.nextGaussian(), spread * random.nextGaussian()),
                            new OffsetCovariance(spread, 0.3 * spread, 0.5 * spread))
                    .withPath(List.of(SampleScenes.place(spread * 3, -spread), SampleScenes.place(-spread, 0.4)))
                    .withGoal(AxisOffset.ofArcminutes(random.nextGaussian(), random.nextGaussian()));

            DrawnSvg drawn = drawn(scene);
            drawn.assertLegible();
            DrawnLabels labels = DrawnLabels.of(drawn);
            labels.assertNearestToTheirOwnMarks();
            labels.assertEdgeLabelsOutsideTheZone();
            labels.assertEveryMarkIsNamed();
        }
    }

    /** If explanations disagree, each of their places is shown and none as certain. */
    @Test
    void possiblePlaces_areOpenDiamonds_andNoneIsFilled() {
        ZoneScene scene = ZoneScene.of(DiscAllowance.VISUAL, true)
                .withNow(AxisOffset.ofArcminutes(0, 3), new OffsetCovariance(20, 0, 2))
                .withPossible(List.of(AxisOffset.ofArcminutes(-4.5, 3), AxisOffset.ofArcminutes(4.5, 3)));
        DrawnSvg drawn = drawn(scene);
        drawn.assertLegible();
        assertThat(drawn.parts("possible")).hasSize(2);
        assertThat(drawn.parts("now")).isEmpty();
        assertThat(drawn.paper().contains(drawn.parts("possible").get(0).extent()))
                .isTrue();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void labelOfEachMark_isNearestToItsOwnMark(String name) {
        DrawnLabels.of(drawn(scene(name))).assertNearestToTheirOwnMarks();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void labelsOfTheEdge_areOutsideTheZone(String name) {
        DrawnLabels.of(drawn(scene(name))).assertEdgeLabelsOutsideTheZone();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void everyMarkIsNamed_nextToItOrInTheKey(String name) {
        DrawnLabels.of(drawn(scene(name))).assertEveryMarkIsNamed();
    }

    @Test
    void nearlyCoincidentAimAndPole_shareALabelThatDistinguishesThem() {
        assertThat(words(drawn(SampleScenes.poleBelowAim(true, 0.3))))
                .contains("best aim and true pole, 0.3′ below it");
        assertThat(words(drawn(SampleScenes.poleBelowAim(true, 0.02)))).contains("best aim and true pole");
    }

    @Test
    void firstFix_isNamedRightNextToItsDot() {
        DrawnSvg drawn = drawn(SampleScenes.poleBelowAim(false, 0.9));
        Rectangle2D dot = drawn.parts("before").get(0).extent();

        Lettered label = drawn.partsOf("first-fix").get(0).texts().get(0);
        assertThat(DrawnLabels.apart(label.box(), dot)).isLessThan(12);
    }

    @Test
    void leaders_areAsThickAsTheRulers() {
        DrawnSvg drawn = drawn(scene("many items"));

        assertThat(drawn.strokeWidths("leader")).isNotEmpty().allMatch(width -> width >= 1.2);
        assertThat(drawn.strokeWidths("ruler")).allMatch(width -> width <= 1.2);
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void noTextHidesTheAxis_orThePole_orTheAim(String name) {
        DrawnSvg drawn = drawn(scene(name));

        for (String mark : List.of("now", "pole", "aim")) {
            for (DrawnSvg part : drawn.parts(mark)) {
                assertThat(drawn.texts()).as(mark).noneMatch(text -> text.box().intersects(part.extent()));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void everyCauseIsNamed(String name) {
        String words = words(drawn(scene(name)));

        for (ZoneRim.Stretch cause : ZoneRim.of(scene(name).allowance()).causes()) {
            assertThat(words).contains(cause.words());
        }
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void axisAimAndZone_areToScale(String name) {
        ZoneScene scene = scene(name);
        DrawnSvg drawn = drawn(scene);
        int maps = drawn.lines("scale").size();

        for (int map = 0; map < maps; map++) {
            double perArcmin = unitsPerArcmin(drawn, map);
            double poleX = drawn.parts("pole").get(map).extent().getCenterX();
            double poleY = drawn.parts("pole").get(map).extent().getCenterY();
            double side = scene.northern() ? 1 : -1;

            if (scene.now().isPresent()) {
                Rectangle2D now = drawn.parts("now").get(map).extent();
                AxisOffset offset = scene.now().get().offset();
                assertThat(now.getCenterX() - poleX)
                        .isEqualTo(side * perArcmin * offset.east().arcminutes(), within(0.03 + far(perArcmin)));
                assertThat(poleY - now.getCenterY())
                        .isEqualTo(perArcmin * offset.up().arcminutes(), within(0.03 + far(perArcmin)));
            }
            Line2D stake = drawn.lines("stake").get(map);
            AxisOffset aim = scene.allowance().bestAim();
            assertThat(stake.getX1() - poleX)
                    .isEqualTo(side * perArcmin * aim.east().arcminutes(), within(0.05));
            assertThat(poleY - stake.getY1()).isEqualTo(perArcmin * aim.up().arcminutes(), within(0.05));
            Rectangle2D zone = drawn.parts(ZonePanel.ZONE).get(map).extent();
            Angle east = scene.allowance().eastSpan().high();
            assertThat(scene.northern() ? zone.getMaxX() - poleX : poleX - zone.getMinX())
                    .isEqualTo(perArcmin * east.arcminutes(), within(0.05));
        }
    }

    // Ends of the scale are written to 0.01 units, which adds up over thousands of units.
    private static double far(double unitsPerArcmin) {
        return 0.1 * unitsPerArcmin;
    }

    @Test
    void regions_extendToOneAndTwoSigmas() {
        ZoneScene scene = ZoneScene.of(DiscAllowance.VISUAL, true)
                .withNow(AxisOffset.ofArcminutes(3, 1), new OffsetCovariance(1.44, 0.5, 0.64));
        DrawnSvg drawn = drawn(scene);
        double perArcmin = unitsPerArcmin(drawn, 0);
        DrawnSvg regions = drawn.parts("sigmas").get(0);

        Rectangle2D twoSigmas = regions.extent();
        assertThat(twoSigmas.getWidth()).isEqualTo(2 * 2 * 1.2 * perArcmin, within(0.1));
        assertThat(twoSigmas.getHeight()).isEqualTo(2 * 2 * 0.8 * perArcmin, within(0.1));
        for (Line2D hatch : drawn.edges("sigmas")) {
            // Edges of the outline are at two sigmas, ends of the shading at one.
            double sigmas = sigmas(hatch, drawn, perArcmin, scene);
            assertThat(Math.abs(sigmas - 1) < 0.01 || Math.abs(sigmas - 2) < 0.01)
                    .as("%s sigmas", sigmas)
                    .isTrue();
        }
    }

    @Test
    void east_isOnTheRightInTheNorth_andOnTheLeftInTheSouth() {
        double north =
                x(drawn(SampleScenes.threeItems(true)), "east") - x(drawn(SampleScenes.threeItems(true)), "west");
        double south =
                x(drawn(SampleScenes.threeItems(false)), "east") - x(drawn(SampleScenes.threeItems(false)), "west");

        assertThat(north).isPositive();
        assertThat(south).isNegative();
    }

    @Test
    void southernZone_isTheNorthernOneMirrored() {
        Rectangle2D north = drawn(SampleScenes.threeItems(true))
                .parts(ZonePanel.ZONE)
                .get(0)
                .extent();
        Rectangle2D south = drawn(SampleScenes.threeItems(false))
                .parts(ZonePanel.ZONE)
                .get(0)
                .extent();
        // The middle of the map lies between its margins of 26 and 12.
        double mirror = 26 + 348;

        assertThat(south.getMinX()).isEqualTo(mirror - north.getMaxX(), within(0.02));
        assertThat(south.getMinY()).isEqualTo(north.getMinY(), within(0.02));
    }

    @Test
    void axisFarOff_isShownOnItsOwnMap_withTheZoneLarge() {
        DrawnSvg drawn = drawn(SampleScenes.far(true));

        assertThat(drawn.lines("scale")).hasSize(2);
        assertThat(drawn.paper().contains(drawn.parts("now").get(0).extent())).isTrue();
        Rectangle2D zone = drawn.parts(ZonePanel.ZONE).get(1).extent();
        assertThat(zone.getHeight()).isGreaterThan(100);
        assertThat(drawn.paper().contains(zone)).isTrue();
        assertThat(words(drawn)).contains("times larger:");
    }

    @Test
    void preciselyKnownAxis_isOnlyItsMark_withANote() {
        DrawnSvg drawn = drawn(scene("three items, tiny sigma"));

        assertThat(drawn.parts("sigmas")).isEmpty();
        assertThat(words(drawn)).contains("Its uncertainty is smaller than its mark.");
    }

    @Test
    void titleAndDescription_areThereForScreenReaders() {
        DrawnSvg drawn = drawn(SampleScenes.threeItems(false));

        assertThat(drawn.root().getAttribute("role")).isEqualTo("img");
        assertThat(drawn.root().getElementsByTagName("title").item(0).getTextContent())
                .isEqualTo("The zone in which the axis may point tonight: it is outside");
        assertThat(drawn.root().getElementsByTagName("desc").item(0).getTextContent())
                .isEqualTo(
                        "A map of the sky about the south celestial pole, west to the right, up at the top. The zone's"
                                + " edge: M 13 guided: corners trail; Vega 120 s: stars trail; Saturn at 200×:"
                                + " leaves the field."
                                + " The best aim is 0.3′ east and 1.4′ above the pole. The axis points 2.6′ east and"
                                + " 0.6′ below"
                                + " the pole.");
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void palette_changesOnlyColours(String name) {
        String light = ZoneDrawing.svg(scene(name), Palette.LIGHT);
        String dark = ZoneDrawing.svg(scene(name), Palette.DARK);

        assertThat(dark).isNotEqualTo(light).contains(Palette.DARK.background());
        assertThat(dark.replaceAll("#[0-9a-f]{6}", "#")).isEqualTo(light.replaceAll("#[0-9a-f]{6}", "#"));
    }

    @Test
    void longNames_areWrappedAndCutOff() {
        ZoneScene scene = ZoneScene.of(
                SampleZones.zone(
                        AxisOffset.NONE,
                        SampleZones.Rule.ellipse(
                                "Everything that anybody could wish to see tonight, and Abracadabraabracadabra",
                                LimitCause.DRIFT,
                                0,
                                3,
                                2)),
                true);

        for (Lettered text : drawn(scene).texts()) {
            assertThat(drawn(scene).paper().contains(text.box()))
                    .as(text.toString())
                    .isTrue();
        }
        assertThat(words(drawn(scene)))
                .contains("Everything that anybody could…")
                .contains("stars trail");
    }

    /** The picture in the documents matches the code; {@code -Dpictures=write} updates it. */
    @Test
    void committedPicture_matchesTheCode() throws Exception {
        Path picture = Path.of("..", "docs", "pictures", "zone.svg");
        String drawn = ZoneDrawing.svg(SampleScenes.threeItems(true), Palette.LIGHT);
        if ("write".equals(System.getProperty("pictures"))) {
            Files.createDirectories(picture.getParent());
            Files.writeString(picture, drawn);
        }

        assertThat(Files.readString(picture)).isEqualTo(drawn);
    }

    private static ZoneScene scene(String name) {
        return Optional.ofNullable(SCENES.get(name)).orElseThrow();
    }

    private static DrawnSvg drawn(ZoneScene scene) {
        return DrawnSvg.parse(ZoneDrawing.svg(scene, Palette.LIGHT));
    }

    private static String words(DrawnSvg drawn) {
        return drawn.texts().stream().map(Lettered::content).collect(Collectors.joining(" "));
    }

    private static double x(DrawnSvg drawn, String word) {
        return drawn.texts().stream()
                .filter(text -> text.content().equals(word))
                .findFirst()
                .orElseThrow()
                .box()
                .getCenterX();
    }

    private static double sigmas(Line2D line, DrawnSvg drawn, double perArcmin, ZoneScene scene) {
        Rectangle2D now = drawn.parts("now").get(0).extent();
        double east = (line.getX1() - now.getCenterX()) / perArcmin;
        double up = (now.getCenterY() - line.getY1()) / perArcmin;
        return Math.sqrt(scene.now()
                .orElseThrow()
                .covariance()
                .orElseThrow()
                .normalisedSquare(AxisOffset.ofArcminutes(east, up)));
    }

    /** Using the scale as a reader of the picture would: the drawn length of its bar, and the label below it. */
    private static double unitsPerArcmin(DrawnSvg drawn, int map) {
        Line2D bar = drawn.lines("scale").get(map);
        String words = drawn.texts().stream()
                .filter(t -> t.content().matches("[0-9.]+[″′°]"))
                .filter(t -> Math.abs(t.box().getCenterY() - bar.getY1()) < 30)
                .findFirst()
                .orElseThrow()
                .content();
        double figure = Double.parseDouble(words.substring(0, words.length() - 1));
        double arcmin = words.endsWith("°") ? 60 * figure : words.endsWith("′") ? figure : figure / 60;
        return (bar.getX2() - bar.getX1()) / arcmin;
    }
}
