package polewright.simulation.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.atlas.StarField;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.RefractedDirection;

class StarPlacesTest {
    static Stream<Arguments> bothHemispheres() {
        return Stream.of(
                Arguments.of(Night.LARKFELL, "Polaris", 0.0),
                Arguments.of(Night.LARKFELL, "Deneb", 77.0),
                Arguments.of(Night.TUSSOCK_FLAT, "sigma octantis", 200.0),
                Arguments.of(Night.TUSSOCK_FLAT, "Antares", 300.0));
    }

    private static CatalogueStar beside(CatalogueStar star, double eastArcmin, double northArcmin) {
        Angle dec = star.declination().plus(Angle.ofArcminutes(northArcmin));
        Angle ra = star.rightAscension()
                .plus(Angle.ofArcminutes(eastArcmin / star.declination().cos()));
        return CatalogueStar.fixed(ra, dec);
    }

    @ParameterizedTest
    @MethodSource("bothHemispheres")
    void images_areAtTheirTruePositions(Night night, String name, double rollDeg) {
        RenderedFrame picture =
                Night.RENDERER.renderWithoutNoise(night.tracked(Night.smallCamera(), night.toward(name, rollDeg), 1));
        double sky = Night.sky(picture.frame());

        List<TrueStar> lonely = picture.truth().stars().stream()
                .filter(star -> star.electrons() > 3000 && insideBy(25, star) && aloneIn(picture.truth(), star))
                .toList();

        assertThat(lonely).isNotEmpty();
        for (TrueStar star : lonely) {
            Night.Blob blob = Night.blob(picture.frame(), star.x(), star.y(), 8, sky);
            assertThat(blob.x()).isCloseTo(star.x(), within(0.02));
            assertThat(blob.y()).isCloseTo(star.y(), within(0.02));
        }
    }

    private static boolean insideBy(double margin, TrueStar star) {
        return star.x() > margin && star.x() < 439 - margin && star.y() > margin && star.y() < 359 - margin;
    }

    private static boolean aloneIn(SkyTruth truth, TrueStar star) {
        return truth.stars().stream()
                .noneMatch(other -> other.number() != star.number()
                        && Math.abs(other.x() - star.x()) < 25
                        && Math.abs(other.y() - star.y()) < 25);
    }

    @ParameterizedTest
    @MethodSource("bothHemispheres")
    void aimedStar_isCentred_withTheRequestedRoll(Night night, String name, double rollDeg) {
        RenderedFrame picture =
                Night.RENDERER.renderWithoutNoise(night.tracked(Night.smallCamera(), night.toward(name, rollDeg), 1));

        TrueStar brightest = picture.truth().stars().get(0);

        assertThat(brightest.x()).isCloseTo(219.5, within(1e-4));
        assertThat(brightest.y()).isCloseTo(179.5, within(1e-4));
        assertThat(picture.truth().roll().degrees()).isCloseTo(rollDeg, within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({"false, -1", "true, 1"})
    void withNorthUp_eastIsLeft_andRightInAMirror(boolean mirrored, int sideOfEast) {
        // Common practice: a chart of the sky with north up has east on its left.
        for (Night night : List.of(Night.LARKFELL.airless(), Night.TUSSOCK_FLAT.airless())) {
            CatalogueStar middle = CatalogueStar.fixed(Angle.ofDegrees(300), Angle.ofDegrees(5));
            SimulatedCamera camera = Night.smallCamera();
            Exposure exposure =
                    night.tracked(camera.with(camera.optics().withMirrored(mirrored)), night.toward(middle, 0), 1);
            SkyView view = SkyView.of(exposure, 0);

            Vector2D east = view.pixelOf(beside(middle, 2, 0)).orElseThrow();
            Vector2D north = view.pixelOf(beside(middle, 0, 2)).orElseThrow();

            // 2′ at 1.4851″ a pixel.
            assertThat(east.getX() - 219.5).isCloseTo(sideOfEast * 80.80, within(0.05));
            assertThat(east.getY() - 179.5).isCloseTo(0, within(0.05));
            assertThat(north.getX() - 219.5).isCloseTo(0, within(0.05));
            assertThat(north.getY() - 179.5).isCloseTo(-80.80, within(0.05));
        }
    }

    @Test
    void roll_isThePositionAngleOfUp() {
        Night night = Night.LARKFELL.airless();
        CatalogueStar middle = CatalogueStar.fixed(Angle.ofDegrees(300), Angle.ofDegrees(5));
        SkyView view = SkyView.of(night.tracked(Night.smallCamera(), night.toward(middle, 90), 1), 0);

        Vector2D east = view.pixelOf(beside(middle, 2, 0)).orElseThrow();

        assertThat(east.getX() - 219.5).isCloseTo(0, within(0.05));
        assertThat(east.getY() - 179.5).isCloseTo(-80.80, within(0.05));
    }

    @Test
    void cameraAxes_areRightDownAndFront() {
        Night night = Night.LARKFELL;
        Rotation level = CameraAim.at(RefractedDirection.of(Angle.ZERO, Angle.ofDegrees(0)), Angle.ZERO);

        // Looking at the northern horizon: east is right, the ground is down.
        assertThat(Vector3D.distance(level.applyTo(Vector3D.PLUS_I), Vector3D.PLUS_I))
                .isLessThan(1e-12);
        assertThat(Vector3D.distance(level.applyTo(Vector3D.PLUS_J), Vector3D.MINUS_K))
                .isLessThan(1e-12);
        assertThat(Vector3D.distance(level.applyTo(Vector3D.PLUS_K), Vector3D.PLUS_J))
                .isLessThan(1e-12);
        // Tilted to the right, the picture's up is east of the zenith.
        Rotation leaning = CameraAim.at(RefractedDirection.of(Angle.ZERO, Angle.ofDegrees(0)), Angle.ofDegrees(30));
        assertThat(leaning.applyTo(Vector3D.MINUS_J).getX()).isCloseTo(0.5, within(1e-12));
        assertThat(night.site().isNorthern()).isTrue();
    }

    @ParameterizedTest
    @MethodSource("bothHemispheres")
    void field_hasExactlyTheAtlasStars(Night night, String name, double rollDeg) {
        SimulatedCamera camera = Night.wideCamera();
        RenderedFrame picture =
                Night.RENDERER.renderWithoutNoise(night.tracked(camera, night.toward(name, rollDeg), 5));
        CatalogueStar centre = picture.truth().centre();
        // A cone that just fits between the upper and lower edges, at 59.8″ a pixel.
        double radiusDeg = 235 * 59.8 / 3600;
        StarField field = StarAtlas.bundled()
                .starsWithin(centre.rightAscension(), centre.declination(), Angle.ofDegrees(radiusDeg), 8);

        List<Integer> inPicture =
                picture.truth().stars().stream().map(TrueStar::number).toList();

        assertThat(field.size()).isGreaterThan(20);
        for (int i = 0; i < field.size(); i++) {
            assertThat(inPicture).contains(field.number(i));
        }
        assertThat(inPicture).doesNotHaveDuplicates();
        for (TrueStar star : picture.truth().stars()) {
            assertThat(star.x()).isBetween(-0.5, 599.5);
            assertThat(star.y()).isBetween(-0.5, 479.5);
        }
    }

    @ParameterizedTest
    @MethodSource("bothHemispheres")
    void pixelToSky_invertsSkyToPixel(Night night, String name, double rollDeg) {
        SimulatedCamera camera = Night.wideCamera();
        SimulatedCamera bent = camera.with(camera.optics()
                .withDistortion(new Distortion(-0.05, 0.003, -0.002))
                .withMirrored(true));
        SkyView view = SkyView.of(night.tracked(bent, night.toward(name, rollDeg), 5), 0);

        for (double[] pixel : new double[][] {{0, 0}, {599, 0}, {10, 470}, {300, 240}, {599, 479}}) {
            Vector2D back = view.pixelOf(view.icrsAt(pixel[0], pixel[1])).orElseThrow();
            assertThat(back.getX()).isCloseTo(pixel[0], within(1e-4));
            assertThat(back.getY()).isCloseTo(pixel[1], within(1e-4));
        }
    }

    @Test
    void refraction_compressesTheFieldNearTheHorizon() {
        // At 10° altitude refraction changes by about 0.5″ per arcminute (5.3′ at 10°, 4.9′ at 11°: handbook curve).
        Night night = Night.LARKFELL;
        Rotation low = CameraAim.at(RefractedDirection.of(Angle.ofDegrees(90), Angle.ofDegrees(10.5)), Angle.ZERO);
        SimulatedCamera camera = Night.wideCamera();
        CatalogueStar above = SkyView.of(night.tracked(camera, low, 1), 0).icrsAt(299.5, 239.5 - 60);
        CatalogueStar below = SkyView.of(night.tracked(camera, low, 1), 0).icrsAt(299.5, 239.5 + 60);

        double seen = 2 * Math.toDegrees(Math.atan(60 * 5.8e-3 / 20));
        double real = Vector3D.angle(
                new Vector3D(
                        above.rightAscension().radians(), above.declination().radians()),
                new Vector3D(
                        below.rightAscension().radians(), below.declination().radians()));

        assertThat((Math.toDegrees(real) - seen) * 60).isBetween(0.6, 1.1);
    }
}
