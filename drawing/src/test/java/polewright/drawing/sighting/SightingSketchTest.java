package polewright.drawing.sighting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Line2D;
import java.util.List;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.alignment.sighting.BodyBearing;
import polewright.drawing.DrawnSvg;
import polewright.drawing.Palette;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

class SightingSketchTest {
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);
    private static final double SLACK = 1e-9;

    private static DrawnSvg drawn(SightingSketch sketch) {
        return DrawnSvg.parse(sketch.svg(Palette.LIGHT));
    }

    private static Angle degrees(double degrees) {
        return Angle.ofDegrees(degrees);
    }

    /** Right and up from the line's start. */
    private static Vector2D vector(Line2D line) {
        return new Vector2D(line.getX2() - line.getX1(), line.getY1() - line.getY2());
    }

    static Stream<SightingSketch> everyKind() {
        View inverted = View.of(Orientation.INVERTED);
        View mirrored = View.of(Orientation.MIRRORED);
        return Stream.of(
                        Stream.of(0.0, 3.0, 90.0, 180.0, 270.0, 356.0)
                                .flatMap(bearing -> Stream.of(-0.6, 23.5, -40.0)
                                        .flatMap(declination -> Stream.of(true, false)
                                                .map(isNorthern -> new SightingSketch.Compass(
                                                        degrees(bearing), degrees(declination), isNorthern)))),
                        Stream.of(-179.0, -70.0, 0.0, 4.0, 25.0, 130.0)
                                .flatMap(angle -> Stream.of(BodyBearing.Line.values())
                                        .map(line -> new SightingSketch.FromLine(line, "the Sun", degrees(angle)))),
                        Stream.of(0.0, 20.0, 54.6, 90.0)
                                .flatMap(read -> Stream.of(true, false)
                                        .map(fromZenith -> new SightingSketch.Scale(degrees(read), fromZenith, true))),
                        Stream.of(-30.0, 0.0, 12.5, 50.0)
                                .map(difference ->
                                        new SightingSketch.Difference("Capella", degrees(54.6), degrees(difference))),
                        Stream.of(0.0, 0.1, 0.39, 1.0)
                                .flatMap(far -> Stream.of(12.0, 4.5, 9.0)
                                        .map(clock -> new SightingSketch.Still(
                                                "Polaris", far, new ClockDirection(clock), inverted, true))),
                        Stream.of(0.0, 0.05, 2.5, 7.0)
                                .flatMap(moved -> Stream.of("divisions", "field widths", "arcseconds")
                                        .map(unit -> new SightingSketch.Drift(
                                                "RA 279.2340 Dec +38.7",
                                                moved,
                                                unit,
                                                new SightingSketch.SkyPoint(false),
                                                SkyInView.onMeridian(LARKFELL, mirrored)))),
                        Stream.of(0.0, 0.05, 0.2, 0.5, 0.85)
                                .flatMap(off ->
                                        Stream.of(true, false).map(isNorth -> new TrailSketch("Kochab", off, isNorth))),
                        Stream.of(new SightingSketch.Centred("Capella", Angle.ofArcminutes(1))))
                .flatMap(kind -> kind);
    }

    @ParameterizedTest
    @MethodSource("everyKind")
    void texts_areOnThePaper_doNotOverlap_andAreLegibleOnAPhone(SightingSketch sketch) {
        drawn(sketch).assertLegible();
    }

    @ParameterizedTest
    @MethodSource("everyKind")
    void onlyColoursOfThePaletteAreUsed(SightingSketch sketch) {
        Palette dark = Palette.DARK;
        assertThat(java.util.regex.Pattern.compile("#[0-9a-f]{6}")
                        .matcher(sketch.svg(dark))
                        .results()
                        .map(java.util.regex.MatchResult::group))
                .isSubsetOf(
                        dark.background(),
                        dark.text(),
                        dark.ink(),
                        dark.guide(),
                        dark.metal(),
                        dark.glass(),
                        dark.axis());
    }

    @ParameterizedTest
    @CsvSource({
        // bearing, declination, whether true north is drawn to the right of the axis: with a bearing east of north it
        // is on the left.
        "10, 0, false",
        "350, 0, true",
        "5, -20, true",
        "350, 20, false",
    })
    void trueNorth_isDrawnOnTheCorrectSide(double bearing, double declination, boolean isRight) {
        Line2D north = drawn(new SightingSketch.Compass(degrees(bearing), degrees(declination), true))
                .line("true-north");
        assertThat(vector(north).getX() > 0).isEqualTo(isRight);
        assertThat(vector(north).getY()).isPositive();
    }

    @Test
    void southernSite_needlePointsTowardTheObserver() {
        DrawnSvg drawn = drawn(new SightingSketch.Compass(degrees(156.5), degrees(23.5), false));
        assertThat(vector(drawn.line("needle")).getY()).isNegative();
        // 156.5° + 23.5° is due south: straight ahead.
        assertThat(vector(drawn.line("true-south")).getX()).isCloseTo(0, within(0.01));
        assertThat(vector(drawn.line("true-south")).getY()).isPositive();
    }

    @Test
    void angleClockwiseToTheAxis_hasItsShadowOnTheLeft() {
        assertThat(vector(drawn(new SightingSketch.FromLine(BodyBearing.Line.SHADOW, "the Sun", degrees(25)))
                                .line("from"))
                        .getX())
                .isNegative();
        assertThat(vector(drawn(new SightingSketch.FromLine(BodyBearing.Line.TOWARD_BODY, "Capella", degrees(-25)))
                                .line("from"))
                        .getX())
                .isPositive();
    }

    @ParameterizedTest
    @CsvSource({"54.6, false, 54.6", "35.4, true, 54.6"})
    void axisIsInclinedAsTheScaleReads(double reading, boolean isFromZenith, double altitude) {
        Vector2D axis = vector(drawn(new SightingSketch.Scale(degrees(reading), isFromZenith, true))
                .line("axis"));
        assertThat(Math.toDegrees(Math.atan2(axis.getY(), axis.getX()))).isCloseTo(altitude, within(0.1));
    }

    @Test
    void starIsBelowTheAxis_byTheDifference() {
        DrawnSvg drawn = drawn(new SightingSketch.Difference("Capella", degrees(54.6), degrees(12.5)));
        Vector2D axis = vector(drawn.line("axis"));
        Vector2D tube = vector(drawn.line("tube"));
        assertThat(Math.toDegrees(Vector2D.angle(axis, tube))).isCloseTo(12.5, within(0.1));
        assertThat(tube.getY()).isLessThan(axis.getY());
    }

    @Test
    void offsetFromTheCentreOfRotation_isInTheClockDirection() {
        Vector2D offset = vector(drawn(new SightingSketch.Still(
                        "Polaris", 0.25, new ClockDirection(3), View.of(Orientation.INVERTED), true))
                .line("offset"));
        assertThat(offset.getX()).isPositive();
        assertThat(offset.getY()).isCloseTo(0, within(0.01));
    }

    @ParameterizedTest
    @CsvSource({
        // Common practice. Facing the pole, east is on the right in the north and on the left in the south.
        "ERECT, true, right",
        "INVERTED, true, left",
        "MIRRORED, true, left",
        "ERECT, false, left",
        "MIRRORED, false, right",
    })
    void east_isOnTheSideWhereTheEyepieceShowsIt(Orientation orientation, boolean isFacingNorth, String side) {
        DrawnSvg drawn = drawn(
                new SightingSketch.Still("Polaris", 0.1, new ClockDirection(12), View.of(orientation), isFacingNorth));
        double east = place(drawn, "east");
        double west = place(drawn, "west");
        assertThat(east > west).isEqualTo(side.equals("right"));
    }

    private static double place(DrawnSvg drawn, String word) {
        return drawn.texts().stream()
                .filter(text -> text.content().equals(word))
                .findFirst()
                .orElseThrow()
                .box()
                .getCenterX();
    }

    @Test
    void facingSouthOnTheMeridian_northIsUpAndWestRight() {
        SkyInView seen = SkyInView.about(new Vector3D(0, -Math.cos(0.5), Math.sin(0.5)), LARKFELL, View.NAKED_EYE);
        assertThat(seen.north().distance(new Vector2D(0, 1))).isLessThan(SLACK);
        assertThat(seen.west().distance(new Vector2D(1, 0))).isLessThan(SLACK);
        assertThat(seen.north()
                        .distance(SkyInView.onMeridian(LARKFELL, View.NAKED_EYE).north()))
                .isLessThan(SLACK);
    }

    @Test
    void facingNorthFromASouthernSite_northIsDownAndWestLeft() {
        SkyInView seen = SkyInView.about(new Vector3D(0, Math.cos(0.5), Math.sin(0.5)), TUSSOCK_FLAT, View.NAKED_EYE);
        assertThat(seen.north().distance(new Vector2D(0, -1))).isLessThan(SLACK);
        assertThat(seen.west().distance(new Vector2D(-1, 0))).isLessThan(SLACK);
        assertThat(seen.west()
                        .distance(SkyInView.onMeridian(TUSSOCK_FLAT, View.NAKED_EYE)
                                .west()))
                .isLessThan(SLACK);
    }

    /**
     * Stars leave toward west with the drive stopped; the other directions follow from whether the view is mirrored.
     */
    @ParameterizedTest
    @CsvSource({"3, false, 12", "9, true, 12", "9, false, 6", "4, true, 7"})
    void north_followsFromWhereStarsLeave(double west, boolean isMirrored, double north) {
        double angle = new ClockDirection(north).clockwiseFromTop().radians();
        assertThat(SkyInView.of(new ClockDirection(west), isMirrored)
                        .north()
                        .distance(new Vector2D(Math.sin(angle), Math.cos(angle))))
                .isLessThan(SLACK);
    }

    @Test
    void starDriftingSouth_movesDownInADiagonal_andUpInAnInvertedView() {
        for (Orientation orientation : List.of(Orientation.MIRRORED, Orientation.INVERTED)) {
            Vector2D drift = vector(drawn(new SightingSketch.Drift(
                            "Rigel",
                            2.5,
                            "divisions",
                            new SightingSketch.SkyPoint(false),
                            SkyInView.onMeridian(LARKFELL, View.of(orientation))))
                    .line("drift"));
            assertThat(drift.getY() > 0).isEqualTo(orientation == Orientation.INVERTED);
        }
    }
}
