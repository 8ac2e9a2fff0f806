package polewright.operations.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import polewright.sky.angle.Angle;

/** A part of a frame shows what is in it in the right place, and points to what is not. */
class CloseUpTest {
    private static final LiveFrame WHOLE = new LiveFrame(
            "frame.fits",
            Optional.empty(),
            1000,
            800,
            3,
            List.of(star(250, 200, "in the middle"), star(300, 200, "to the right"), star(900, 700, "elsewhere")),
            mark("pole", 750, 200),
            Optional.of(mark("axis", 260, 210)),
            new LiveFrame.Scale(200, Angle.ofArcseconds(600)),
            0.5,
            2);

    private static LiveFrame.Star star(double x, double y, String name) {
        return new LiveFrame.Star(new LiveFrame.Place(x, y), 5, Optional.of(name));
    }

    private static LiveFrame.Mark mark(String label, double x, double y) {
        return new LiveFrame.Mark(
                label,
                Optional.of(new LiveFrame.Place(x, y)),
                true,
                new LiveFrame.Place(0, 0),
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
        LiveFrame part = new CloseUp(4, 0.25, 0.25).of(WHOLE);
        assertThat(part.stars()).hasSize(2);
        assertThat(part.stars().get(0).place()).isEqualTo(new LiveFrame.Place(500, 400));
        assertThat(part.stars().get(1).place()).isEqualTo(new LiveFrame.Place(700, 400));
    }

    @Test
    void marksOutside_arePointedTo_marksInsideAreDrawn() {
        LiveFrame part = new CloseUp(4, 0.25, 0.25).of(WHOLE);
        assertThat(part.pole().isOnFrame()).isFalse();
        assertThat(part.pole().edge()).isEqualTo(new LiveFrame.Place(1000, 400));
        assertThat(part.pole().direction()).isZero();
        assertThat(part.axis().orElseThrow().place()).hasValue(new LiveFrame.Place(540, 440));
    }

    @Test
    void scaleBar_spansItsStatedAngle() {
        LiveFrame.Scale bar = new CloseUp(4, 0.25, 0.25).of(WHOLE).scale();
        assertThat(bar.points() / bar.sky().arcseconds()).isCloseTo(4 * 200 / 600.0, within(1e-9));
        assertThat(bar.points()).isLessThanOrEqualTo(250);
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
