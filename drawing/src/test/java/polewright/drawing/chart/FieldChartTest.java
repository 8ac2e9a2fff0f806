package polewright.drawing.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.DeepSkyList;
import polewright.sky.atlas.DeepSkyObject;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Orientation of the sky in a view: common practice that needs no formula. */
class FieldChartTest {
    private static final Site LARKFELL = Site.ofDegrees(54.6, -2.9, 240);
    private static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.4, 710);
    private static final Instant EVENING = Instant.parse("2026-11-25T20:30:00Z");
    private static final Angle SIX_DEGREES = Angle.ofDegrees(6);

    private static ObservingMoment moment(Site site) {
        return ObservingMoment.of(site, SkyTime.of(EVENING), Weather.standardAt(site.heightMetres()));
    }

    private static ViewOfSky looking(double azimuthDeg, double altitudeDeg, View view) {
        return new ViewOfSky(RefractedDirection.of(Angle.ofDegrees(azimuthDeg), Angle.ofDegrees(altitudeDeg)), view);
    }

    private static SkyBody star(String name) {
        return new FixedStar(name, NamedStars.bundled().named(name).place());
    }

    /** Directions (right, up) of north and east, for an observer facing the meridian. */
    @ParameterizedTest
    @CsvSource({
        // site latitude, azimuth faced, view, north right, north up, east right, east up
        "54.6, 180, ERECT, 0, 1, -1, 0",
        "54.6, 180, INVERTED, 0, -1, 1, 0",
        "54.6, 180, MIRRORED, 0, 1, 1, 0",
        "-43.95, 0, ERECT, 0, -1, 1, 0",
        "-43.95, 0, INVERTED, 0, 1, -1, 0",
        "-43.95, 0, MIRRORED, 0, -1, -1, 0"
    })
    void northAndEast_haveTheirDirectionsInEachView(
            double latitude,
            double azimuth,
            Orientation orientation,
            double northRight,
            double northUp,
            double eastRight,
            double eastUp) {
        Site site = Site.ofDegrees(latitude, 0, 0);
        ViewOfSky sky = looking(azimuth, 40, View.of(orientation));
        assertClose(sky.northward(site).orElseThrow(), northRight, northUp);
        assertClose(sky.eastward(site).orElseThrow(), eastRight, eastUp);
    }

    /** A star diagonal turned to its right side rotates the whole view a quarter clockwise. */
    @Test
    void turnedDiagonal_rotatesTheField() {
        ViewOfSky sky = looking(180, 40, new View(Orientation.MIRRORED, Angle.ofDegrees(90)));
        assertClose(sky.northward(LARKFELL).orElseThrow(), 1, 0);
        assertClose(sky.zenithward().orElseThrow(), 1, 0);
    }

    @Test
    void northIsUndefinedAtThePole_andUpAtTheZenith() {
        assertThat(looking(0, 54.6, View.NAKED_EYE).northward(LARKFELL)).isEmpty();
        assertThat(looking(0, 54.6, View.NAKED_EYE).eastward(LARKFELL)).isEmpty();
        assertThat(looking(0, 90, View.NAKED_EYE).zenithward()).isEmpty();
    }

    private static void assertClose(Vector2D way, double right, double up) {
        assertThat(way.getX()).isCloseTo(right, within(1e-3));
        assertThat(way.getY()).isCloseTo(up, within(1e-3));
    }

    /** Distances in the chart equal those on the sky, in any view. */
    @ParameterizedTest
    @ValueSource(strings = {"ERECT", "INVERTED", "MIRRORED"})
    void distancesBetweenStars_areThoseOnTheSky(String orientation) {
        ObservingMoment moment = moment(LARKFELL);
        SkyBody alcyone = star("Alcyone");
        FieldChart chart = FieldChart.of(alcyone, moment, SIX_DEGREES, View.of(Orientation.valueOf(orientation)), 8);
        FieldChart.Star atlas = chart.stars().stream()
                .filter(star -> star.name().filter("Atlas"::equals).isPresent())
                .findFirst()
                .orElseThrow();
        ApparentPlace middle = Ephemeris.apparent(alcyone, moment);
        Angle onSky = middle.separation(Ephemeris.apparent(star("Atlas"), moment));
        // Refraction compresses a field at 50° altitude by a few parts in ten thousand.
        assertThat(new Angle(atlas.place().getNorm()).arcminutes()).isCloseTo(onSky.arcminutes(), within(0.02));
        assertThat(chart.stars())
                .allSatisfy(star -> assertThat(star.place().getNorm()).isLessThanOrEqualTo(SIX_DEGREES.radians() / 2));
    }

    @Test
    void starsAreBrightestFirst_andCrowdedFieldsLoseTheFaintest() {
        FieldChart chart = FieldChart.of(star("Deneb"), moment(LARKFELL), SIX_DEGREES, View.NAKED_EYE, 12);
        assertThat(chart.stars()).hasSizeBetween(200, 260);
        assertThat(chart.stars()).extracting(FieldChart.Star::magnitude).isSorted();
        assertThat(chart.faintest()).isLessThan(11);
        assertThat(chart.stars().get(0).name()).contains("Deneb");
    }

    @Test
    void objectsAndPlanetsInTheField_areMarked() {
        ObservingMoment moment = moment(LARKFELL);
        SkyBody galaxy = new FixedStar(
                "M 31 (Andromeda Galaxy)", DeepSkyList.bundled().named("M 31").place());
        FieldChart chart = FieldChart.of(galaxy, moment, SIX_DEGREES, View.NAKED_EYE, 9);
        assertThat(chart.objects()).extracting(FieldChart.Mark::label).anyMatch(l -> l.startsWith("M 32"));
        assertThat(chart.objects().stream().filter(m -> m.label().startsWith("M 31")))
                .allSatisfy(mark -> {
                    assertThat(mark.place().getNorm()).isLessThan(1e-6);
                    assertThat(mark.radius().degrees()).isBetween(1.0, 2.0);
                });
        FieldChart moon = FieldChart.of(SolarSystemBody.MOON, moment(TUSSOCK_FLAT), SIX_DEGREES, View.NAKED_EYE, 6);
        assertThat(moon.objects().get(0).radius().arcminutes()).isBetween(14.5, 17.0);
    }

    /** The middle of the Virgo cluster has more galaxies than a chart can label. */
    @Test
    void targetIsNeverLeftOut_amongManyGalaxies() {
        DeepSkyObject galaxy = DeepSkyList.bundled().named("NGC 4473");
        FieldChart chart = FieldChart.of(
                new FixedStar(galaxy.label(), galaxy.place()), moment(LARKFELL), SIX_DEGREES, View.NAKED_EYE, 12);
        assertThat(chart.objects()).hasSize(8);
        assertThat(chart.objects().get(0).label()).isEqualTo(galaxy.label());
        assertThat(chart.objects()).extracting(FieldChart.Mark::label).anyMatch(label -> label.startsWith("M 87"));
    }

    @Test
    void directionFromAGuideStar_isThatInTheView() {
        SkyBody galaxy =
                new FixedStar("M 31", DeepSkyList.bundled().named("M 31").place());
        FieldChart erect = FieldChart.of(galaxy, moment(LARKFELL), SIX_DEGREES, View.NAKED_EYE, 9);
        FieldChart inverted = FieldChart.of(galaxy, moment(LARKFELL), SIX_DEGREES, View.of(Orientation.INVERTED), 9);
        GuideStar fromErect = GuideStar.nearest(erect).orElseThrow();
        GuideStar fromInverted = GuideStar.nearest(inverted).orElseThrow();
        assertThat(fromErect.star().label()).isEqualTo("Mirach");
        assertThat(fromErect.distance().degrees()).isCloseTo(7.7, within(0.3));
        assertThat(fromInverted.towardTarget().add(fromErect.towardTarget()).getNorm())
                .isLessThan(1e-9);
    }

    @ParameterizedTest
    @CsvSource({"6, 9.0", "1, 11.0", "0.4, 12.0", "60, 6.4"})
    void usualLimit_dependsOnTheField(double fieldDeg, double magnitude) {
        assertThat(FieldChart.usualLimit(Angle.ofDegrees(fieldDeg))).isCloseTo(magnitude, within(0.1));
    }
}
