package polewright.operations.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.geom.Point2D;
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
import polewright.alignment.camera.AxisFromFrames;
import polewright.image.Frame;
import polewright.image.decode.DecodeOptions;
import polewright.image.decode.FrameReader;
import polewright.image.match.PixelPlace;
import polewright.mount.AxisEstimate;
import polewright.operations.camera.CameraEvening;
import polewright.operations.camera.ExposureTime;
import polewright.operations.camera.FrameClues;
import polewright.operations.camera.FrameFile;
import polewright.operations.camera.FrameReading;
import polewright.operations.camera.FrameSeries;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Each mark is in the right place, identified by its colour, in a picture of frames near the pole. */
class FramePictureTest {
    private static final Weather WEATHER = Weather.standardAt(CameraEvening.LARKFELL.heightMetres());

    private static final Color AXIS = Color.decode(FramePicture.COLOURS.axis());
    private static final Color WORDS = Color.decode(FramePicture.COLOURS.text());
    private static final Color RINGS = Color.decode(FramePicture.COLOURS.ink());
    private static final Color GROUND = Color.decode(FramePicture.COLOURS.background());

    @TempDir
    private static Path frames;

    private static FrameSeries series;
    private static AxisFromFrames axis;
    private static Frame last;

    @BeforeAll
    static void takeFrames() {
        CameraEvening evening = CameraEvening.atLarkfell();
        evening.pointAt(-40, 89.4);
        List<Path> files = evening.takeTurning(frames, 3, 30);
        FrameReading reading = new FrameReading(Clock.systemUTC());
        List<PlacedFrame> placed = new ArrayList<>();
        for (Path file : files) {
            placed.add(reading.place(
                    FrameFile.read(file),
                    FrameClues.NONE.at(CameraEvening.LARKFELL),
                    ExposureTime.ifKnown(Optional.empty()),
                    placed.stream().findFirst()));
        }
        series = FrameSeries.of(placed, CameraEvening.LARKFELL, WEATHER);
        axis = AxisFromFrames.of(CameraEvening.LARKFELL, series.attitudes());
        FrameFile file = FrameFile.read(files.get(2));
        last = FrameReader.read(file.content(), file.name(), DecodeOptions.DEFAULT);
    }

    private static PlacedFrame frame() {
        return series.frames().get(2);
    }

    private static CameraAttitude attitude() {
        return series.attitudes().get(2);
    }

    private static PointMark truePole() {
        return PointMarks.truePole(frame(), attitude(), CameraEvening.LARKFELL);
    }

    private static BufferedImage drawn(Optional<PointMark> axis) throws IOException {
        byte[] png = FramePicture.png(last, frame(), truePole(), axis, List.of("one line of words"));
        return ImageIO.read(new ByteArrayInputStream(png));
    }

    /** Converts a frame pixel to a picture position; the frame's first row is on top. */
    private static Point2D shown(PixelPlace place) {
        double perPixel = 1200.0 / 640;
        return new Point2D.Double((place.x() + 0.5) * perPixel, (place.y() + 0.5) * perPixel);
    }

    private static Point2D shown(Vector3D direction) {
        return shown(frame().match().plate().toPixel(direction).orElseThrow());
    }

    private static boolean hasColour(BufferedImage image, Color colour, double x, double y, int within) {
        for (int row = (int) y - within; row <= y + within; row++) {
            for (int column = (int) x - within; column <= x + within; column++) {
                Color there = new Color(image.getRGB(column, row));
                int off = Math.abs(there.getRed() - colour.getRed())
                        + Math.abs(there.getGreen() - colour.getGreen())
                        + Math.abs(there.getBlue() - colour.getBlue());
                if (off < 40) {
                    return true;
                }
            }
        }
        return false;
    }

    @Test
    void axis_isDrawnAtItsSolution_insideItsRegion() throws IOException {
        AxisEstimate vague = axis.estimate().widenedBy(Angle.ofArcminutes(6));
        PointMark mark = PointMarks.axis(frame(), attitude(), vague);
        BufferedImage image = drawn(Optional.of(mark));
        Point2D at = shown(mark.direction());
        assertThat(hasColour(image, AXIS, at.getX(), at.getY(), 2)).isTrue();
        // 6′ and 2.45 times that: 43 pixels of 20.6″, 80 points of the picture, equal in all directions.
        assertThat(mark.outline())
                .hasSize(72)
                .allSatisfy(corner -> assertThat(shown(corner).distance(at)).isBetween(78.0, 84.0));
        // Labels and the pole's cross may cover part of it.
        assertThat(mark.outline())
                .filteredOn(corner -> hasColour(
                        image, AXIS, shown(corner).getX(), shown(corner).getY(), 3))
                .hasSizeGreaterThan(50);
    }

    @Test
    void truePole_isOffsetFromTheStars_byRefraction() throws IOException {
        PointMark truePole = truePole();
        PointMark amongStars = PointMarks.pole(frame(), attitude().at());
        double refractedBy = Vector3D.angle(truePole.direction(), amongStars.direction());
        ObservingMoment moment =
                ObservingMoment.of(CameraEvening.LARKFELL, SkyTime.of(attitude().at()), WEATHER);
        double lift =
                moment.refraction().lift(CameraEvening.LARKFELL.poleAltitude()).arcseconds();
        assertThat(Math.toDegrees(refractedBy) * 3600).isBetween(lift - 2, lift + 2);
        BufferedImage image = drawn(Optional.empty());
        Point2D at = shown(truePole.direction());
        for (int[] arm : new int[][] {{16, 0}, {-16, 0}, {0, 16}, {0, -16}}) {
            assertThat(hasColour(image, WORDS, at.getX() + arm[0], at.getY() + arm[1], 2))
                    .isTrue();
        }
    }

    @Test
    void knownStars_haveRings() throws IOException {
        BufferedImage image = drawn(Optional.empty());
        long ringed = frame().match().pairs().stream()
                .map(pair -> shown(new PixelPlace(pair.found().x(), pair.found().y())))
                .filter(at -> at.getX() > 30 && at.getX() < 1170 && at.getY() > 30 && at.getY() < 870)
                .filter(at -> hasColour(image, RINGS, at.getX(), at.getY(), 18))
                .count();
        assertThat(ringed).isGreaterThan(20);
    }

    @Test
    void markOffTheFrame_hasAnArrowAtTheEdge() throws IOException {
        Vector3D south = new Vector3D(
                1,
                frame().match().plate().centre(),
                0.3,
                frame().match().plate().right());
        BufferedImage image = drawn(Optional.of(new PointMark(south.normalize(), List.of(), "axis")));
        // The camera's right is the picture's right, so a point there lies beyond the middle of the right edge.
        assertThat(hasColour(image, AXIS, 1180, 450, 6)).isTrue();
    }

    @Test
    void captions_areBelowThePicture() throws IOException {
        BufferedImage image = drawn(Optional.empty());
        assertThat(image.getHeight()).isBetween(900 + 2 * 40, 900 + 3 * 60);
        assertThat(new Color(image.getRGB(4, image.getHeight() - 4))).isEqualTo(GROUND);
    }
}
