package polewright.image.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;

/** The message for a frame that was not matched: all that was searched, and how to widen the search. */
class UnmatchedTest {
    private static final MatchHint ANYWHERE = MatchHint.none(2026.9);
    private static final Angle RADIUS = Angle.ofDegrees(10);
    private static final MatchHint NORTH = ANYWHERE.near(SkyPatch.aroundPole(true, RADIUS));
    private static final MatchHint SOUTH = ANYWHERE.near(SkyPatch.aroundPole(false, RADIUS));

    @Test
    void bothPoles_areNamedIfBothWereSearched() {
        Unmatched unmatched = Unmatched.anywhere(40, List.of(NORTH, SOUTH));
        assertThat(unmatched.reason())
                .isEqualTo("the stars found on it (40) do not match any stars within 10 degrees of the north celestial"
                        + " pole"
                        + " or of the south celestial pole");
        assertThat(unmatched.remedy()).isEqualTo("search the whole sky, or check focus and trails");
    }

    @Test
    void positionAndScale_areNamed() {
        Unmatched unmatched = Unmatched.anywhere(
                12,
                List.of(ANYWHERE.near(new SkyPatch(Angle.ofDegrees(83.8), Angle.ofDegrees(-5.4), RADIUS))
                        .withScale(new ScaleRange(Angle.ofArcseconds(2), Angle.ofArcseconds(3)))));
        assertThat(unmatched.reason())
                .isEqualTo("the stars found on it (12) do not match any stars within 10 degrees of right ascension"
                        + " 83.8,"
                        + " declination -5.4 at 2 to 3 arcseconds per pixel");
        assertThat(unmatched.remedy()).isEqualTo("search the whole sky at any scale, or check focus and trails");
    }

    @Test
    void wholeSkyAtAnyScale_cannotBeWidened() {
        Unmatched unmatched = Unmatched.anywhere(9, List.of(ANYWHERE));
        assertThat(unmatched.reason()).isEqualTo("the stars found on it (9) do not match any stars of the sky");
        assertThat(unmatched.remedy()).isEqualTo("check focus and trails, or take another frame");
    }
}
