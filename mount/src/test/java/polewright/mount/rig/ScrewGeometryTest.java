package polewright.mount.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.mount.rig.ScrewGeometry.DegreesPerTurn;
import polewright.mount.rig.ScrewGeometry.PushScrew;
import polewright.mount.rig.ScrewGeometry.Turnbuckle;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

class ScrewGeometryTest {
    private static final Angle REFERENCE = Angle.ofDegrees(50);
    private static final Turnbuckle TURNBUCKLE = new Turnbuckle(120, 150, 90, REFERENCE, 2);

    /** Computed outside this project: thread pitch 1.25 mm on a lever of 100 mm gives 42.97′ per turn. */
    @Test
    void pushScrew_movesTheArctangentOfPitchOverArm() {
        Angle perTurn = new PushScrew(1.25, 100).move(1, Angle.ZERO);

        assertThat(perTurn.arcminutes()).isEqualTo(42.97, within(0.005));
        assertThat(perTurn.tan()).isEqualTo(0.0125, within(1e-15));
    }

    /** Computed outside this project: a = 120, b = 150, c = 90 mm, 2 mm per turn: 57.296′ per turn at the reference. */
    @Test
    void turnbuckle_atItsReference_movesTheWorkedExamplesRate() {
        double small = 1e-6;

        double perTurn = TURNBUCKLE.move(small, REFERENCE).arcminutes() / small;

        assertThat(perTurn).isEqualTo(57.296, within(0.0005));
    }

    /** Computed outside this project: the same for one whole turn, 57.298′. */
    @Test
    void turnbuckle_overAWholeTurn_followsTheTriangle() {
        assertThat(TURNBUCKLE.move(1, REFERENCE).arcminutes()).isEqualTo(57.298, within(0.0005));
    }

    /** Section (h): dg/dc = c / (a b sin g), with g at other altitudes the reference opening plus the difference. */
    @Test
    void turnbuckle_atAnotherAltitude_usesTheLeverArmThere() {
        double opening = Math.acos(0.8) + Math.toRadians(20);
        double length = Math.sqrt(120 * 120 + 150 * 150 - 2 * 120 * 150 * Math.cos(opening));
        double expected = Math.toDegrees(2 * length / (120 * 150 * Math.sin(opening))) * 60;
        double small = 1e-6;

        double perTurn = TURNBUCKLE.move(small, Angle.ofDegrees(70)).arcminutes() / small;

        assertThat(perTurn).isEqualTo(expected, within(0.001));
    }

    @Test
    void turnbuckle_stopsWhereTheTriangleClosesFlat() {
        Random random = new Random(5);
        for (int i = 0; i < 1000; i++) {
            double a = 50 + 200 * random.nextDouble();
            double b = 50 + 200 * random.nextDouble();
            double c = Math.abs(a - b) + (a + b - Math.abs(a - b)) * (0.1 + 0.8 * random.nextDouble());
            Turnbuckle turnbuckle = new Turnbuckle(a, b, c, REFERENCE, 2);

            double opened = turnbuckle.move(1000, REFERENCE).degrees();
            double shut = turnbuckle.move(-1000, REFERENCE).degrees();

            assertThat(opened).isGreaterThan(0).isLessThan(180);
            assertThat(shut).isLessThan(0).isGreaterThan(-180);
            assertThat(opened - shut).isEqualTo(180, within(1e-4));
        }
    }

    static Stream<ScrewGeometry> geometries() {
        return Stream.of(
                new DegreesPerTurn(Angle.ofDegrees(0.7)),
                new PushScrew(1.25, 100),
                new PushScrew(2, 60),
                TURNBUCKLE,
                new Turnbuckle(150, 120, 200, Angle.ofDegrees(35), 1.5));
    }

    @ParameterizedTest
    @MethodSource("geometries")
    void turnsFor_invertsMove(ScrewGeometry geometry) {
        Random random = new Random(1234);
        for (int i = 0; i < 500; i++) {
            double turns = 16 * random.nextDouble() - 8;
            Angle altitude = Angle.ofDegrees(40 + 20 * random.nextDouble());

            Angle move = geometry.move(turns, altitude);

            assertThat(Math.signum(move.radians())).isEqualTo(Math.signum(turns));
            assertThat(geometry.turnsFor(move, altitude)).isEqualTo(turns, within(1e-9));
        }
    }

    @ParameterizedTest
    @MethodSource("geometries")
    void zeroTurns_doNotMoveTheAxis(ScrewGeometry geometry) {
        assertThat(geometry.move(0, REFERENCE).radians()).isEqualTo(0, within(1e-12));
        assertThat(geometry.turnsFor(Angle.ZERO, REFERENCE)).isEqualTo(0, within(1e-12));
    }

    @Test
    void turnsThereAndBack_restoreTheAxis() {
        Angle there = TURNBUCKLE.move(6, REFERENCE);
        Angle back = TURNBUCKLE.move(-6, REFERENCE.plus(there));

        assertThat(there.plus(back).radians()).isEqualTo(0, within(1e-12));
    }

    @Test
    void impossibleMeasures_areRefused_withTheRemedy() {
        assertThatThrownBy(() -> new PushScrew(0, 100))
                .isInstanceOf(InputRefused.class)
                .hasMessage("thread pitch of 0.0 mm is outside 0 to 20.0 mm. Measure it on the wedge, or give degrees"
                        + " per turn instead.");
        assertThatThrownBy(() -> new PushScrew(1.25, -3))
                .isInstanceOf(InputRefused.class)
                .hasMessage("arm length of -3.0 mm is outside 0 to 2000.0 mm. Measure it on the wedge, or give degrees"
                        + " per turn instead.");
        assertThatThrownBy(() -> new DegreesPerTurn(Angle.ofDegrees(Double.NaN)))
                .isInstanceOf(InputRefused.class)
                .hasMessage("movement per turn of NaN degrees is outside 0 to 90.0 degrees. Measure it on the wedge, or"
                        + " give degrees per turn instead.");
    }

    @Test
    void sidesThatCannotFormATriangle_areRefused() {
        String remedy = ". Measure the three distances between the pivots' centres again.";
        assertThatThrownBy(() -> new Turnbuckle(120, 150, 270, REFERENCE, 2))
                .isInstanceOf(InputRefused.class)
                .hasMessage("a screw of 270.0 mm does not form a triangle with sides 120.0 and 150.0 mm" + remedy);
        assertThatThrownBy(() -> new Turnbuckle(120, 150, 30, REFERENCE, 2))
                .isInstanceOf(InputRefused.class)
                .hasMessage("a screw of 30.0 mm does not form a triangle with sides 120.0 and 150.0 mm" + remedy);
    }
}
