package polewright.image.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.image.star.FoundStar;
import polewright.image.star.StarList;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;

/** Matches simulated star lists; bench/frames-success does the same with pixels. */
@Tag("slow")
class FrameMatcherTest {
    private static final FrameMatcher MATCHER = new FrameMatcher(StarAtlas.bundled());

    private static MatchHint scaleKnown(ListedSky sky, Random dice) {
        Angle said = new Angle(sky.scaleRad() * (0.85 + 0.3 * dice.nextDouble()));
        return MatchHint.none(ListedSky.JULIAN_YEAR).withScale(ScaleRange.about(said, 0.2));
    }

    private static MatchHint near(ListedSky sky, Random dice) {
        Angle ra = new Angle(sky.centre().getAlpha()).wrappedPositive();
        double dec = Math.max(-90, Math.min(90, Math.toDegrees(sky.centre().getDelta()) + 2));
        return scaleKnown(sky, dice).near(new SkyPatch(ra, Angle.ofDegrees(dec), Angle.ofDegrees(10)));
    }

    private static double offPixels(MatchOutcome outcome, ListedSky sky) {
        return outcome instanceof MatchedFrame matched
                ? Vector3D.angle(matched.plate().centre(), sky.centre()) / sky.scaleRad()
                : Double.POSITIVE_INFINITY;
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 5, 12, 30, 60})
    void frameOfKnownScale_isMatchedAnywhereInTheSky(double fieldDeg) {
        Random dice = new Random((long) (10 * fieldDeg));
        int tried = 0;
        int unmatched = 0;
        while (tried < 25) {
            ListedSky sky = ListedSky.of(dice, fieldDeg, dice.nextBoolean());
            StarList stars = sky.list(dice);
            if (stars.size() < 18) {
                continue;
            }
            tried++;
            double off = offPixels(MATCHER.match(stars, scaleKnown(sky, dice)), sky);
            if (Double.isInfinite(off)) {
                unmatched++;
            } else {
                assertThat(off).isLessThan(1);
            }
        }
        // One in twenty stars is missing and one in six detections is spurious: occasionally no pattern is complete.
        assertThat(unmatched).isLessThanOrEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.6, 1, 5, 40})
    void frameWithoutHints_isMatched(double fieldDeg) {
        Random dice = new Random((long) (10 * fieldDeg) + 1);
        for (int i = 0; i < 6; i++) {
            ListedSky sky = ListedSky.of(dice, fieldDeg, dice.nextBoolean());
            StarList stars = sky.list(dice);
            if (stars.size() < 18) {
                continue;
            }
            assertThat(offPixels(MATCHER.match(stars, MatchHint.none(ListedSky.JULIAN_YEAR)), sky))
                    .isLessThan(1);
        }
    }

    @ParameterizedTest
    @CsvSource({"1, 90", "1, -90", "5, 90", "5, -90", "25, 90", "25, -90"})
    void framesAtThePoles_areMatchedWithAPoleHint(double fieldDeg, double poleDec) {
        Random dice = new Random((long) (fieldDeg + poleDec));
        for (int i = 0; i < 8; i++) {
            ListedSky drawn = ListedSky.of(dice, fieldDeg, dice.nextBoolean());
            Vector3D centre = new Vector3D(
                    dice.nextDouble() * 6, Math.toRadians(poleDec - Math.signum(poleDec) * 3 * dice.nextDouble()));
            ListedSky sky = drawn.lookingAt(centre);
            MatchHint hint = scaleKnown(sky, dice).near(SkyPatch.aroundPole(poleDec > 0, Angle.ofDegrees(5)));
            assertThat(offPixels(MATCHER.match(sky.list(dice), hint), sky)).isLessThan(1);
        }
    }

    @Test
    void parity_isFound() {
        Random dice = new Random(8);
        for (boolean mirrored : new boolean[] {true, false}) {
            ListedSky sky = ListedSky.of(dice, 6, mirrored);
            assertThat(MATCHER.match(sky.list(dice), scaleKnown(sky, dice)))
                    .isInstanceOfSatisfying(
                            MatchedFrame.class,
                            matched -> assertThat(matched.plate().mirrored()).isEqualTo(mirrored));
        }
    }

    @Test
    void wrongParityHint_isNotMatched() {
        Random dice = new Random(9);
        ListedSky sky = ListedSky.of(dice, 6, true);
        MatchHint hint = scaleKnown(sky, dice);
        MatchHint wrong = new MatchHint(hint.near(), hint.scale(), Optional.of(false), hint.julianYear());
        assertThat(MATCHER.match(sky.list(dice), wrong)).isInstanceOf(Unmatched.class);
    }

    @ParameterizedTest
    @CsvSource({"10, -0.03", "10, 0.02", "40, -0.05", "40, 0.02", "60, -0.05"})
    void distortedLens_isMatched_andItsDistortionFitted(double fieldDeg, double corner) {
        Random dice = new Random((long) (fieldDeg + 1000 * corner));
        for (int i = 0; i < 8; i++) {
            ListedSky sky = ListedSky.of(dice, fieldDeg, dice.nextBoolean()).withDistortion(corner);
            MatchOutcome outcome = MATCHER.match(sky.list(dice), near(sky, dice));
            assertThat(offPixels(outcome, sky)).isLessThan(1);
            assertThat(((MatchedFrame) outcome).model()).isNotEqualTo(PlateModel.PINHOLE);
        }
    }

    @Test
    void fewStarsAmongAsManySpuriousDetections_areMatched() {
        Random dice = new Random(12);
        int matched = 0;
        for (int i = 0; i < 40; i++) {
            ListedSky sky =
                    ListedSky.of(dice, 3 + 20 * dice.nextDouble(), false).with(15, 0.02, 12);
            double off = offPixels(MATCHER.match(sky.list(dice), scaleKnown(sky, dice)), sky);
            if (off < 2) {
                matched++;
            } else {
                assertThat(off).as("a wrong match").isInfinite();
            }
        }
        assertThat(matched).isGreaterThanOrEqualTo(37);
    }

    @Test
    void uncertainty_isThatOfTheCentresOverTheRootOfTheirNumber() {
        Random dice = new Random(3);
        ListedSky sky = ListedSky.of(dice, 4, false);
        MatchedFrame frame = (MatchedFrame) MATCHER.match(sky.list(dice), scaleKnown(sky, dice));
        double pixels = frame.covariance().centreSigma().radians() / sky.scaleRad();
        double expected = 0.15 / Math.sqrt(frame.starsMatched());
        assertThat(pixels / expected).isBetween(0.7, 1.7);
        assertThat(frame.rmsArcsec() / Math.toDegrees(sky.scaleRad()) / 3600).isBetween(0.15, 0.27);
    }

    @ParameterizedTest
    @ValueSource(ints = {6, 12, 30, 150})
    void randomPoints_areNotMatched(int count) {
        Random dice = new Random(count);
        for (int i = 0; i < 4; i++) {
            List<FoundStar> points = new ArrayList<>();
            for (int j = 0; j < count; j++) {
                points.add(new FoundStar(
                        dice.nextDouble() * 1600,
                        dice.nextDouble() * 1200,
                        0.2,
                        0.2,
                        1e5 / (j + 1),
                        20,
                        3,
                        1,
                        0,
                        false));
            }
            assertThat(MATCHER.match(new StarList(1600, 1200, points), MatchHint.none(2026)))
                    .isInstanceOf(Unmatched.class);
        }
    }

    /** The hardest to distinguish from a real sky: each star shifted by ten times its position error. */
    @Test
    void shuffledSky_isNotMatched() {
        Random dice = new Random(77);
        for (int i = 0; i < 10; i++) {
            ListedSky sky = ListedSky.of(dice, 2 + 10 * dice.nextDouble(), false);
            List<FoundStar> moved = sky.list(dice).stars().stream()
                    .map(s -> new FoundStar(
                            1599 - dice.nextDouble() * 1599, s.y(), 0.2, 0.2, s.flux(), 20, 3, 1, 0, false))
                    .toList();
            assertThat(MATCHER.match(new StarList(1600, 1200, moved), scaleKnown(sky, dice)))
                    .isInstanceOf(Unmatched.class);
        }
    }

    @Test
    void tooFewStars_areReported() {
        assertThat(MATCHER.match(new StarList(100, 100, List.of()), MatchHint.none(2026)))
                .isEqualTo(new Unmatched(0, "it shows no stars", "expose longer, focus, or take the cap off"));
    }

    @Test
    void sameFrame_matchesTheSameWayTwice() {
        Random dice = new Random(31);
        ListedSky sky = ListedSky.of(dice, 3, false);
        StarList stars = sky.list(dice);
        MatchHint hint = scaleKnown(sky, dice);
        MatchedFrame first = (MatchedFrame) MATCHER.match(stars, hint);
        MatchedFrame second = (MatchedFrame) MATCHER.match(stars, hint);
        assertThat(second.pairs()).isEqualTo(first.pairs());
        assertThat(second.covariance()).isEqualTo(first.covariance());
    }
}
