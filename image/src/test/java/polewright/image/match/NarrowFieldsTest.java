package polewright.image.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.image.star.FoundStar;
import polewright.image.star.StarList;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;

/** Fields with few atlas stars, with a position known to some degrees and a scale to some per cent. */
@Tag("slow")
class NarrowFieldsTest {
    private static final int FEWEST = 5;
    private static final int STRAYS = 4;
    private static FrameMatcher matcher;

    @BeforeAll
    static void open() {
        KeptInMemory.wholeSky();
        matcher = new FrameMatcher(StarAtlas.bundled(), KeptInMemory.WHOLE_SKY);
    }

    private static MatchHint hint(ListedSky sky, Random dice) {
        Angle said = new Angle(sky.scaleRad() * (0.96 + 0.08 * dice.nextDouble()));
        Vector3D c = sky.centre();
        double declinationDeg = Math.toDegrees(c.getDelta()) * 0.97;
        return MatchHint.none(ListedSky.JULIAN_YEAR)
                .withScale(ScaleRange.about(said, 0.05))
                .near(new SkyPatch(
                        new Angle(c.getAlpha()).wrappedPositive(),
                        Angle.ofDegrees(declinationDeg),
                        Angle.ofDegrees(5)));
    }

    @ParameterizedTest
    @CsvSource({"0.54, 120, 0.98", "0.3, 200, 0.95"})
    void fieldsWithFiveOrMoreAtlasStars_areMatched(double fieldDeg, int fields, double share) {
        int tried = 0;
        int placed = 0;
        for (int seed = 0; seed < fields; seed++) {
            Random dice = new Random(700 + seed);
            ListedSky sky = ListedSky.of(dice, fieldDeg, dice.nextBoolean()).with(120, 0, STRAYS);
            StarList stars = sky.list(dice);
            if (stars.size() - STRAYS < FEWEST) {
                continue;
            }
            tried++;
            MatchOutcome outcome = matcher.match(stars, hint(sky, dice));
            if (outcome instanceof MatchedFrame matched) {
                placed++;
                assertThat(Vector3D.angle(matched.plate().centre(), sky.centre()) / sky.scaleRad())
                        .as("pixels off, seed %d", 700 + seed)
                        .isLessThan(3);
            }
        }
        assertThat(tried).isGreaterThan(fields / 8);
        assertThat(placed / (double) tried).isGreaterThanOrEqualTo(share);
    }

    @Test
    void randomPoints_areNotMatched() {
        for (int seed = 0; seed < 60; seed++) {
            Random dice = new Random(seed);
            ListedSky sky = ListedSky.of(dice, 0.54, false);
            List<FoundStar> points = new ArrayList<>();
            for (int i = 0; i < 20; i++) {
                points.add(new FoundStar(
                        1599 * dice.nextDouble(),
                        1199 * dice.nextDouble(),
                        0.1,
                        0.1,
                        1e5 / (i + 1),
                        20,
                        3,
                        1,
                        0,
                        false));
            }
            assertThat(matcher.match(new StarList(1600, 1200, points), hint(sky, dice)))
                    .isInstanceOf(Unmatched.class);
        }
    }

    /** The north galactic pole, the poorest part of the sky: right ascension 192.86, declination 27.13 (IAU 1958). */
    @Test
    void thinAtlas_isReported_withTheNearestRichField() {
        SkyPatch poor = new SkyPatch(Angle.ofDegrees(192.86), Angle.ofDegrees(27.13), Angle.ofDegrees(5));
        MatchHint hint = MatchHint.none(2026).near(poor).withScale(ScaleRange.about(Angle.ofArcseconds(0.7), 0.05));
        Unmatched unmatched =
                ThinAtlas.of(StarAtlas.bundled(), 20, 1600, 1200, hint).orElseThrow();
        assertThat(unmatched.reason())
                .matches("the atlas has about \\d stars on a field of 0\\.3 by 0\\.2 degrees within 5 degrees of"
                        + " right ascension 192\\.9, declination 27\\.1, often too few to place a frame");
        assertThat(unmatched.remedy())
                .matches("point at right ascension [\\d.]+, declination [-\\d.]+, \\d+ degrees from there, where the"
                        + " nearest"
                        + " field with 8 stars is, or use a shorter focal length or a larger chip");
    }

    @Test
    void wideFieldsAndFieldsOfUnknownScale_areNotCalledThin() {
        SkyPatch poor = new SkyPatch(Angle.ofDegrees(192.86), Angle.ofDegrees(27.13), Angle.ofDegrees(5));
        MatchHint near = MatchHint.none(2026).near(poor);
        assertThat(ThinAtlas.of(StarAtlas.bundled(), 20, 1600, 1200, near)).isEmpty();
        MatchHint wide = near.withScale(ScaleRange.about(Angle.ofArcseconds(7), 0.05));
        assertThat(ThinAtlas.of(StarAtlas.bundled(), 20, 1600, 1200, wide)).isEmpty();
    }
}
