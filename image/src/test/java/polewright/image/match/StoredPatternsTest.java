package polewright.image.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;

/** Stored patterns are used if they are intact, and give the same results as freshly computed ones. */
@Tag("slow")
class StoredPatternsTest {
    private static final StarAtlas SMALL = SmallAtlas.of(400, 5);

    private static byte[] kept() {
        ByteBuffer bytes = StoredPatterns.computed(SMALL).bytes();
        byte[] copy = new byte[bytes.remaining()];
        bytes.get(copy);
        return copy;
    }

    @Test
    void intactBytes_areUsed() {
        assertThat(StoredPatterns.of(ByteBuffer.wrap(kept()), SMALL)).isPresent();
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 4, 8, 12, 16, 40, 700, 5_000, 20_000})
    void anyChangedByte_isDetected(int at) {
        byte[] bytes = kept();
        bytes[at] ^= 4;
        assertThat(StoredPatterns.of(ByteBuffer.wrap(bytes), SMALL)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 3, 36, 9_000})
    void truncatedBytes_areNotUsed(int length) {
        assertThat(StoredPatterns.of(ByteBuffer.wrap(kept(), 0, length).slice(), SMALL))
                .isEmpty();
    }

    @Test
    void patternsOfAnotherAtlas_areNotUsed() {
        assertThat(StoredPatterns.of(ByteBuffer.wrap(kept()), SmallAtlas.of(400, 6)))
                .isEmpty();
    }

    @Test
    void storedPatterns_equalComputedOnes() {
        PatternIndex read =
                StoredPatterns.of(ByteBuffer.wrap(kept()), SMALL).orElseThrow().at(2030);
        PatternIndex made = new PatternIndex(new MappedStars(
                SMALL.starsWithin(Angle.ZERO, Angle.QUARTER_TURN, Angle.HALF_TURN, 16, 2030), 400, Math.PI));
        assertThat(read.patternCount()).isEqualTo(made.patternCount()).isGreaterThan(300);
        assertThat(read.patterns()).isEqualTo(made.patterns());
        assertThat(read.cellStarts()).isEqualTo(made.cellStarts());
        for (int rank = 0; rank < 400; rank++) {
            assertThat(read.sky().direction(rank)).isEqualTo(made.sky().direction(rank));
            assertThat(read.sky().number(rank)).isEqualTo(rank);
        }
    }

    @Test
    void wholeSky_isComputedOnce_forTheFirstFrameWithoutAPosition() {
        KeptInMemory store = new KeptInMemory();
        Random dice = new Random(2);
        ListedSky sky = ListedSky.of(dice, 5, false);
        MatchHint open = MatchHint.none(ListedSky.JULIAN_YEAR);
        FrameMatcher first = new FrameMatcher(StarAtlas.bundled(), store);
        first.match(sky.list(dice), open.near(SkyPatch.aroundPole(true, Angle.ofDegrees(5))));
        assertThat(store.timesKept()).isZero();
        KeptInMemory.wholeSky();
        FrameMatcher second = new FrameMatcher(StarAtlas.bundled(), KeptInMemory.WHOLE_SKY);
        int before = KeptInMemory.WHOLE_SKY.timesKept();
        assertThat(second.match(sky.list(dice), open)).isInstanceOf(MatchedFrame.class);
        assertThat(KeptInMemory.WHOLE_SKY.timesKept()).isEqualTo(before);
    }

    /** Fields of half a degree around the brightest fast stars, at their past and future positions. */
    @ParameterizedTest
    @ValueSource(doubles = {2016, 2026.9, 2044})
    void fastStars_areFoundAtTheirPositionOfDate(double julianYear) {
        PatternIndex index = KeptInMemory.wholeSky().at(julianYear);
        StarAtlas atlas = StarAtlas.bundled();
        List<Integer> fastest = IntStream.range(0, atlas.sizeWithMotion())
                .boxed()
                .sorted(Comparator.comparingDouble(
                        number -> -atlas.direction(number, 2100).distance(atlas.direction(number, 2000))))
                .limit(30)
                .toList();
        for (int number : fastest) {
            Vector3D expected = atlas.direction(number, julianYear);
            Vector3D[] found = new Vector3D[1];
            index.sky()
                    .grid()
                    .near(
                            expected.getX(),
                            expected.getY(),
                            expected.getZ(),
                            Angle.ofArcseconds(300).radians(),
                            index.sky().count(),
                            (rank, chord2) -> found[0] = index.sky().number(rank) == number
                                    ? index.sky().direction(rank)
                                    : found[0]);
            assertThat(found[0]).as("star %d", number).isNotNull();
            assertThat(Vector3D.angle(found[0], expected))
                    .isLessThan(Angle.ofArcseconds(0.001).radians());
        }
    }

    /** Far from the years covered by stored patterns, they are recomputed. */
    @ParameterizedTest
    @ValueSource(doubles = {1990, 2044})
    void framesOfOtherDecades_areMatched(double julianYear) {
        KeptInMemory.wholeSky();
        FrameMatcher matcher = new FrameMatcher(StarAtlas.bundled(), KeptInMemory.WHOLE_SKY);
        Random dice = new Random(4);
        ListedSky sky = ListedSky.of(dice, 8, true);
        assertThat(matcher.match(sky.list(dice), MatchHint.none(julianYear))).isInstanceOf(MatchedFrame.class);
    }
}
