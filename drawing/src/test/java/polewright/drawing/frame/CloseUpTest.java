package polewright.drawing.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;

/** A part of a frame shows what is in it in the right place, and points to what is not. */
class CloseUpTest {
    private static final FrameScene WHOLE = new FrameScene(
            "frame.fits",
            Optional.empty(),
            1000,
            800,
            3,
            List.of(star(250, 200, "in the middle"), star(300, 200, "to the right"), star(900, 700, "elsewhere")),
            List.of(),
            mark("pole", 750, 200),
            Optional.of(mark("axis", 260, 210)),
            Angle.ofArcseconds(3),
            0.5,
            2);

    private static FrameScene.Star star(double x, double y, String name) {
        return new FrameScene.Star(new FrameScene.Place(x, y), 5, Optional.of(name));
    }

    private static FrameScene.Mark mark(String label, double x, double y) {
        return new FrameScene.Mark(
                label,
                Optional.of(new FrameScene.Place(x, y)),
                true,
                new FrameScene.Place(0, 0),
                0,
                Angle.ofArcminutes(10),
                List.of());
    }

    @Test
    void wholeFrame_isUnchanged() {
        assertThat(CloseUp.WHOLE.of(WHOLE)).isSameAs(WHOLE);
    }

    @Test
    void stars_areInPlaceInThePart_andAbsentOutside() {
        FrameScene part = new CloseUp(4, 0.25, 0.25).of(WHOLE);
        assertThat(part.stars()).hasSize(2);
        assertThat(part.stars().get(0).place()).isEqualTo(new FrameScene.Place(500, 400));
        assertThat(part.stars().get(1).place()).isEqualTo(new FrameScene.Place(700, 400));
    }

    @Test
    void marksOutside_arePointedTo_marksInsideAreDrawn() {
        FrameScene part = new CloseUp(4, 0.25, 0.25).of(WHOLE);
        assertThat(part.pole().isOnFrame()).isFalse();
        assertThat(part.pole().edge()).isEqualTo(new FrameScene.Place(1000, 400));
        assertThat(part.pole().direction()).isZero();
        assertThat(part.axis().orElseThrow().place()).hasValue(new FrameScene.Place(540, 440));
    }

    @Test
    void scaleBar_spansItsStatedAngle() {
        FrameScene part = new CloseUp(4, 0.25, 0.25).of(WHOLE);
        assertThat(part.points(part.scale().length()) / part.scale().length().arcseconds())
                .isCloseTo(4 / 3.0, within(1e-9));
        assertThat(part.points(part.scale().length())).isLessThanOrEqualTo(250);
    }

    @Test
    void part_neverExtendsBeyondTheFrame() {
        CloseUp corner = new CloseUp(4, 0, 1).moved(-3, 3);
        assertThat(corner.left()).isZero();
        assertThat(corner.top()).isEqualTo(0.75);
        assertThat(new CloseUp(100_000, 2, -1).times()).isEqualTo(64);
    }

    @Test
    void closerAndWider_areInverse() {
        CloseUp full = CloseUp.WHOLE.closer(3);
        assertThat(full.times()).isEqualTo(3);
        assertThat(full.closer(3).times()).isEqualTo(6);
        assertThat(full.closer(3).wider(3).times()).isEqualTo(3);
        assertThat(full.wider(3)).isEqualTo(CloseUp.WHOLE);
    }
}
