package polewright.drawing.strip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Rectangle2D;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.drawing.DrawnSvg;
import polewright.drawing.Palette;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.Site;

class HorizonDrawingTest {
    private static final double LEVEL = 300;
    private static final double UNITS_PER_DEG = 3;
    private static final double LEFT = 44;

    private static DrawnSvg drawn(double latitude, double sunDeclination, Horizon horizon) {
        return DrawnSvg.parse(HorizonDrawing.toEdit(
                horizon, Site.ofDegrees(latitude, 0, 0), Angle.ofDegrees(sunDeclination), Palette.LIGHT));
    }

    /**
     * At noon the altitude of the Sun is 90° minus latitude plus declination (common practice), and correspondingly in
     * the south.
     */
    @ParameterizedTest
    @CsvSource({"54.60, -20.9, 14.5", "54.60, 23.4, 58.8", "-43.95, -20.9, 66.95"})
    void sunCulminatesAtItsNoonAltitude(double latitude, double declination, double highest) {
        Rectangle2D sun =
                drawn(latitude, declination, Horizon.OPEN).parts("sun").get(0).extent();
        assertThat((LEVEL - sun.getMinY()) / UNITS_PER_DEG).isCloseTo(highest, within(0.1));
    }

    @ParameterizedTest
    @CsvSource({
        // Latitude, azimuth, degrees right of the strip's left end: the elevated pole is in the middle.
        "54.60, 0, 180",
        "54.60, 90, 270",
        "54.60, 270, 90",
        "-43.95, 180, 180",
        "-43.95, 90, 90",
    })
    void corner_isAtItsAzimuthAndAltitude(double latitude, double azimuth, double across) {
        Horizon one = new Horizon(List.of(new Horizon.Point(Angle.ofDegrees(azimuth), Angle.ofDegrees(20))));
        Rectangle2D corner = drawn(latitude, 0, one).parts("corners").get(0).extent();
        assertThat(corner.getCenterX()).isCloseTo(LEFT + UNITS_PER_DEG * across, within(0.01));
        assertThat(corner.getCenterY()).isCloseTo(LEVEL - UNITS_PER_DEG * 20, within(0.01));
    }

    @ParameterizedTest
    @CsvSource({"54.60, -20.9", "-43.95, 23.4", "5, 0", "84, 23.4", "-84, -23.4"})
    void bothPictures_areLegible(double latitude, double sun) {
        Site site = Site.ofDegrees(latitude, 0, 0);
        Horizon hills = new Horizon(List.of(
                new Horizon.Point(Angle.ofDegrees(60), Angle.ofDegrees(8)),
                new Horizon.Point(Angle.ofDegrees(120), Angle.ofDegrees(35)),
                new Horizon.Point(Angle.ofDegrees(240), Angle.ofDegrees(12))));
        DrawnSvg.parse(HorizonDrawing.svg(hills, site, Rig.typicalForkOnWedge(), Palette.DARK))
                .assertLegible();
        drawn(latitude, sun, hills).assertTextsApart();
    }
}
