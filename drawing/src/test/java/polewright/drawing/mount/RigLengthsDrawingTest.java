package polewright.drawing.mount;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import polewright.drawing.DrawnSvg;
import polewright.drawing.Palette;
import polewright.mount.rig.ForkClearance;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.mount.rig.TravelLimits;
import polewright.sky.angle.Angle;

class RigLengthsDrawingTest {
    private static final Rig MEASURED = Rig.typicalForkOnWedge()
            .withScrews(
                    Screw.rough(new ScrewGeometry.DegreesPerTurn(Angle.ofDegrees(0.6)), ScrewSense.LEFT),
                    Screw.rough(
                            new ScrewGeometry.Turnbuckle(180, 210, 150, Angle.ofDegrees(44), 2.5), ScrewSense.RAISES),
                    Angle.ofDegrees(0.5))
            .withTravel(new TravelLimits(
                    Angle.ofDegrees(-100),
                    Angle.ofDegrees(100),
                    Angle.ofDegrees(15),
                    Optional.of(new ForkClearance(310, 360, 290, 45, 125))));

    private static List<DrawnSvg> drawn(Rig rig) {
        return RigLengthsDrawing.svgs(rig, Palette.LIGHT).stream()
                .map(DrawnSvg::parse)
                .toList();
    }

    private static List<String> letters(DrawnSvg drawn) {
        return drawn.texts().stream().map(DrawnSvg.Lettered::content).toList();
    }

    @Test
    void everyLengthOfTheRig_isShownWithItsValue() {
        assertThat(letters(drawn(Rig.typicalForkOnWedge()).get(0))).contains("180 mm", "thread pitch: 1.25 mm a turn");
        assertThat(letters(drawn(Rig.typicalForkOnWedge()).get(1))).contains("200 mm", "thread pitch: 1.25 mm a turn");
        assertThat(letters(drawn(MEASURED).get(0)))
                .contains("180 mm", "210 mm", "150 mm", "lead of the threads: 2.5 mm a turn");
        assertThat(letters(drawn(MEASURED).get(1))).contains("one turn moves the axis 0.60°");
        assertThat(letters(drawn(MEASURED).get(2))).contains("310 mm", "360 mm", "290 mm", "45 mm", "125 mm");
    }

    @Test
    void unmeasuredFork_showsNoValues() {
        DrawnSvg fork = drawn(Rig.typicalForkOnWedge()).get(2);
        assertThat(letters(fork)).contains("?").noneMatch(text -> text.contains("mm"));
    }

    @Test
    void everyTextIsOnThePaper() {
        for (Rig rig : List.of(Rig.typicalForkOnWedge(), MEASURED)) {
            for (DrawnSvg picture : drawn(rig)) {
                assertThat(picture.texts())
                        .allSatisfy(text -> assertThat(picture.paper().contains(text.box()))
                                .as(text.content())
                                .isTrue());
            }
        }
    }

    @Test
    void turnbuckleTriangle_isToScale() {
        List<java.awt.geom.Line2D> lengths = drawn(MEASURED).get(0).lines("dimension");
        double[] drawn = lengths.stream()
                .mapToDouble(line -> line.getP1().distance(line.getP2()))
                .toArray();
        assertThat(drawn[1] / drawn[0]).isCloseTo(210.0 / 180, within(0.005));
        assertThat(drawn[2] / drawn[0]).isCloseTo(150.0 / 180, within(0.005));
    }
}
