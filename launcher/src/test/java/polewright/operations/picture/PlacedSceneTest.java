package polewright.operations.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.camera.AxisFromFrames;
import polewright.drawing.Palette;
import polewright.drawing.frame.FrameDrawing;
import polewright.drawing.frame.FrameScene;
import polewright.image.decode.RowOrder;
import polewright.image.match.StarPair;
import polewright.operations.camera.CameraEvening;
import polewright.operations.camera.DecodedFrame;
import polewright.operations.camera.EarlierFrames;
import polewright.operations.camera.ExposureTime;
import polewright.operations.camera.FrameClues;
import polewright.operations.camera.FrameFile;
import polewright.operations.camera.FrameReading;
import polewright.operations.camera.FrameSeries;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.atlas.NamedStars;
import polewright.sky.place.Weather;

/** Marks on a live frame are drawn where the light is, near the pole and far from it. */
class PlacedSceneTest {
    private static final Weather WEATHER = Weather.standardAt(CameraEvening.LARKFELL.heightMetres());

    @TempDir
    private static Path frames;

    private static final List<DecodedFrame> DECODED = new ArrayList<>();
    private static final List<PlacedFrame> PLACED = new ArrayList<>();
    private static FrameSeries series;
    private static AxisFromFrames axis;

    @BeforeAll
    static void takeFrames() {
        CameraEvening evening = CameraEvening.atLarkfell();
        evening.pointAt(-40, 89.4);
        List<Path> files = evening.takeTurning(frames, 3, 30);
        evening.pointAt(-40, 70);
        files = new ArrayList<>(files);
        files.add(evening.take(frames.resolve("away.fits")));
        FrameReading reading = new FrameReading(Clock.systemUTC());
        EarlierFrames earlier = EarlierFrames.NONE;
        for (Path file : files) {
            DecodedFrame decoded = reading.decode(FrameFile.read(file), FrameClues.NONE);
            DECODED.add(decoded);
            PlacedFrame placed = reading.place(
                    decoded,
                    FrameClues.NONE.at(CameraEvening.LARKFELL),
                    ExposureTime.ifKnown(Optional.empty()),
                    earlier);
            earlier = earlier.and(placed);
            PLACED.add(placed);
        }
        series = FrameSeries.of(PLACED, CameraEvening.LARKFELL, WEATHER);
        axis = AxisFromFrames.of(CameraEvening.LARKFELL, series.attitudes().subList(0, 3));
    }

    private static FrameScene live(int number) {
        return PlacedScene.onScreen(
                PLACED.get(number),
                series.attitudes().get(number),
                CameraEvening.LARKFELL,
                Optional.of(axis.estimate()));
    }

    private static BufferedImage image(byte[] png) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(png));
    }

    private static int red(BufferedImage image, double x, double y) {
        return image.getRGB((int) x, (int) y) >> 16 & 0xff;
    }

    @Test
    void knownStars_areMarkedOnTheirImages() throws IOException {
        BufferedImage picture = image(ScreenPicture.of(DECODED.get(0)).png(Tint.RED));
        List<FrameScene.Star> stars = live(0).stars();
        assertThat(stars).hasSameSizeAs(PLACED.get(0).match().pairs());
        long bright = stars.subList(0, 10).stream()
                .filter(star -> red(picture, star.place().x(), star.place().y()) > 100)
                .count();
        assertThat(bright).isEqualTo(10);
    }

    /** FITS has its first row at the bottom unless the header says otherwise. */
    @Test
    void frameStoredFromTheBottom_isDrawnUpright() throws IOException {
        DecodedFrame asIs = DECODED.get(0);
        RowOrder turned = asIs.rows() == RowOrder.BOTTOM_UP ? RowOrder.TOP_DOWN : RowOrder.BOTTOM_UP;
        BufferedImage picture = image(ScreenPicture.of(asIs).png(Tint.RED));
        BufferedImage flipped =
                image(ScreenPicture.of(new DecodedFrame(asIs.file(), turned, asIs.frame(), asIs.began()))
                        .png(Tint.RED));
        for (StarPair pair : PLACED.get(0).match().pairs().subList(0, 10)) {
            int x = (int) Math.round(pair.found().x());
            int y = (int) Math.round(pair.found().y());
            assertThat(picture.getRGB(x, y)).isEqualTo(flipped.getRGB(x, picture.getHeight() - 1 - y));
        }
    }

    @Test
    void poleAndAxis_areMarkedAmongTheStars() {
        FrameScene live = live(0);
        assertThat(live.pole().isOnFrame()).isTrue();
        FrameScene.Mark found = live.axis().orElseThrow();
        assertThat(found.isOnFrame()).isTrue();
        // 20.6″ a pixel; the true axis is 42′ east and 17′ low.
        FrameScene.Place pole = live.pole().place().orElseThrow();
        FrameScene.Place mark = found.place().orElseThrow();
        double apart = Math.hypot(pole.x() - mark.x(), pole.y() - mark.y());
        assertThat(apart).isCloseTo(Math.hypot(42, 17) * 60 / 20.6, within(3.0));
        assertThat(found.outline()).hasSize(72);
    }

    /** Turning right ascension rotates the picture about the axis, whose position on the frame stays fixed. */
    @Test
    void axis_staysFixedOnTheFrame_whileRightAscensionTurns() {
        FrameScene.Place first = live(0).axis().orElseThrow().place().orElseThrow();
        FrameScene.Place last = live(2).axis().orElseThrow().place().orElseThrow();
        assertThat(last.x()).isCloseTo(first.x(), within(1.0));
        assertThat(last.y()).isCloseTo(first.y(), within(1.0));
    }

    @Test
    void poleOffTheFrame_hasAnArrowAtTheEdge() {
        FrameScene live = live(3);
        assertThat(live.pole().isOnFrame()).isFalse();
        assertThat(live.pole().away().degrees()).isCloseTo(20, within(1.5));
        Vector3D north = Vector3D.PLUS_K;
        assertThat(Vector3D.angle(PLACED.get(3).match().plate().centre(), north))
                .isCloseTo(live.pole().away().radians(), within(0.01));
        // The pole is to the north.
        assertThat(Math.cos(live.pole().direction() - live.north())).isGreaterThan(0.99);
        FrameScene.Place edge = live.pole().edge();
        double toRim =
                Math.min(Math.min(edge.x(), live.width() - edge.x()), Math.min(edge.y(), live.height() - edge.y()));
        assertThat(toRim).isCloseTo(0, within(2.0));
        assertThat(FrameDrawing.svg(live, Palette.LIGHT))
                .contains("north celestial pole, "
                        + String.format("%.1f°", live.pole().away().degrees()))
                .contains("The pole is off the frame, ");
    }

    @Test
    void namedStars_areLabelled() {
        List<String> names =
                live(0).stars().stream().flatMap(star -> star.name().stream()).toList();
        assertThat(names).isNotEmpty();
        assertThat(NamedStars.bundled().find(names.get(0))).isPresent();
    }

    @Test
    void scaleBar_isARoundAngle() {
        assertThat(live(0).scale().length().arcminutes()).isCloseTo(30, within(1e-9));
        assertThat(live(0).points(live(0).scale().length())).isCloseTo(1800 / 20.6, within(1.0));
    }

    @Test
    void drawing_usesOnlyItsPalette() {
        for (Palette palette : List.of(Palette.LIGHT, Palette.DARK)) {
            String svg = FrameDrawing.svg(live(0), palette);
            assertThat(svg).startsWith("<svg ").contains("class=\"pole\"", "class=\"axis\"", "class=\"scale\"");
            List<String> colours = java.util.regex.Pattern.compile("#[0-9a-f]{6}")
                    .matcher(svg)
                    .results()
                    .map(java.util.regex.MatchResult::group)
                    .distinct()
                    .toList();
            assertThat(colours).isSubsetOf(palette.text(), palette.ink(), palette.axis(), palette.background());
        }
    }

    @Test
    void drawing_hasATextDescription() {
        assertThat(FrameDrawing.description(live(0)))
                .matches(
                        "\\d+ of \\d+ stars matched\\. The pole is on the frame, [\\d.]+[°′] from the centre, [a-z ]+\\."
                                + " The axis is on the frame, [\\d.]+[°′] from the centre, [a-z ]+\\.");
    }

    @Test
    void darkPicture_isOnlyRed() throws IOException {
        BufferedImage picture = image(ScreenPicture.of(DECODED.get(0)).png(Tint.of(Palette.DARK)));
        int brightest = 0;
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                assertThat(picture.getRGB(x, y) & 0xffff).isZero();
                brightest = Math.max(brightest, red(picture, x, y));
            }
        }
        assertThat(brightest).isEqualTo(255);
    }

    @Test
    void daytimePicture_showsDarkStarsOnThePageBackground() throws IOException {
        BufferedImage picture = image(ScreenPicture.of(DECODED.get(0)).png(Tint.of(Palette.LIGHT)));
        FrameScene.Star brightest = live(0).stars().get(0);
        assertThat(red(picture, brightest.place().x(), brightest.place().y())).isLessThan(100);
        assertThat(red(picture, 3, 3)).isGreaterThan(180);
    }

    @ParameterizedTest
    @ValueSource(ints = {-500, 0, 200, 5000})
    void fullSizeCutout_isClippedToTheFrame(int left) throws IOException {
        ScreenPicture picture = ScreenPicture.of(DECODED.get(0));
        BufferedImage part = image(picture.part(Tint.RED, left, 100, 320, 240));
        BufferedImage whole = image(picture.png(Tint.RED));
        assertThat(part.getWidth()).isEqualTo(320);
        assertThat(part.getHeight()).isEqualTo(240);
        int x = Math.max(0, Math.min(left, 640 - 320));
        // This frame is small enough to be shown whole at full size.
        assertThat(part.getRGB(17, 23)).isEqualTo(whole.getRGB(x + 17, 123));
    }
}
