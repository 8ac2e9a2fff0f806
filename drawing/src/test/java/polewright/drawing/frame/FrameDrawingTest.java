package polewright.drawing.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.drawing.DrawnSvg;
import polewright.drawing.DrawnSvg.Lettered;
import polewright.drawing.Palette;
import polewright.drawing.Svg;
import polewright.sky.angle.Angle;

class FrameDrawingTest {
    private static FrameScene.Mark mark(String label, double x, double y, int width, int height) {
        boolean isOn = x >= 0 && x <= width && y >= 0 && y <= height;
        double direction = Math.atan2(y - height / 2.0, x - width / 2.0);
        double reach = Math.min(
                width / 2.0 / Math.max(1e-9, Math.abs(Math.cos(direction))),
                height / 2.0 / Math.max(1e-9, Math.abs(Math.sin(direction))));
        return new FrameScene.Mark(
                label,
                Optional.of(new FrameScene.Place(x, y)),
                isOn,
                new FrameScene.Place(
                        width / 2.0 + reach * Math.cos(direction), height / 2.0 + reach * Math.sin(direction)),
                direction,
                Angle.ofDegrees(3.2),
                List.of());
    }

    private static FrameScene scene(Random random, String pole) {
        int width = 640 + random.nextInt(600);
        int height = 500 + random.nextInt(500);
        double north = 7 * random.nextDouble();
        List<FrameScene.Star> stars = new ArrayList<>();
        List<FrameScene.Place> unmatched = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            FrameScene.Place place = new FrameScene.Place(width * random.nextDouble(), height * random.nextDouble());
            stars.add(new FrameScene.Star(
                    place, 2 + i / 8.0, i % 4 == 0 ? Optional.of("Star number " + i) : Optional.empty()));
            unmatched.add(new FrameScene.Place(width * random.nextDouble(), height * random.nextDouble()));
        }
        return new FrameScene(
                "frame.fits",
                Optional.empty(),
                width,
                height,
                120,
                stars,
                unmatched,
                mark(
                        pole,
                        width * (2 * random.nextDouble() - 0.5),
                        height * (2 * random.nextDouble() - 0.5),
                        width,
                        height),
                Optional.of(mark(
                        "axis",
                        width * (2 * random.nextDouble() - 0.5),
                        height * (2 * random.nextDouble() - 0.5),
                        width,
                        height)),
                Angle.ofArcseconds(Math.exp(6 * random.nextDouble())),
                north,
                north + Math.PI / 2);
    }

    /** Pole and axis may be off the frame in the same direction. */
    @ParameterizedTest
    @CsvSource({"north celestial pole", "south celestial pole"})
    void anyFrame_hasLabelsThatDoNotOverlap_andNamesPoleAndAxis(String pole) {
        Random random = new Random(12);
        for (int i = 0; i < 80; i++) {
            DrawnSvg drawn = DrawnSvg.parse(FrameDrawing.svg(scene(random, pole), Palette.DARK));
            drawn.assertTextsApart();
            assertThat(drawn.parts("pole").get(0).texts()).hasSize(1);
            assertThat(drawn.parts("axis").get(0).texts()).hasSize(1);
        }
    }

    @Test
    void caption_explainsEveryMark_andBreaksLongLines() {
        FrameScene scene = scene(new Random(3), "north celestial pole");
        String words = "word ".repeat(60).strip();
        FrameCaption caption = new FrameCaption(scene, List.of(words));
        Svg svg = Svg.overlay(scene.width(), scene.height() + caption.height(), "Frame", "A frame.", Palette.LIGHT);
        FrameDrawing.draw(scene, svg, Palette.LIGHT);
        caption.draw(svg, Palette.LIGHT);
        DrawnSvg drawn = DrawnSvg.parse(svg.finished());
        drawn.assertTextsApart();
        assertThat(drawn.texts().stream().map(Lettered::content))
                .contains("matched star", "unmatched", "pole", "axis, with 95 % region");
    }
}
