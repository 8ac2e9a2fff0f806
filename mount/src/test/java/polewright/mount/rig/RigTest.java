package polewright.mount.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

class RigTest {
    private static final ScrewGeometry PUSH = new ScrewGeometry.PushScrew(1.5, 130);
    private static final Screw RIGHT = Screw.rough(PUSH, ScrewSense.RIGHT);
    private static final Screw RAISES = Screw.rough(PUSH, ScrewSense.RAISES);
    private static final Optic FINDER =
            new Optic("finder", Angle.ofDegrees(6), View.of(Orientation.INVERTED), Optional.empty());

    @Test
    void typicalFork_findsOpticsByName_inAnyCase() {
        Rig rig = Rig.typicalForkOnWedge();

        assertThat(rig.kind()).isEqualTo(MountKind.FORK_ON_WEDGE);
        assertThat(rig.optic("Finder").orElseThrow().view().orientation()).isEqualTo(Orientation.INVERTED);
        assertThat(rig.optic("binocular")).isEmpty();
    }

    @Test
    void altitudeScrewAsAzimuthScrew_isRefused() {
        assertThatThrownBy(() -> rig(RAISES, RAISES, 1, List.of()))
                .isInstanceOf(InputRefused.class)
                .hasMessage("the azimuth screw of rig 'fork' raises the axis. Give whether a clockwise turn moves it"
                        + " right or left.");
    }

    @Test
    void azimuthScrewAsAltitudeScrew_isRefused() {
        assertThatThrownBy(() -> rig(RIGHT, RIGHT, 1, List.of()))
                .isInstanceOf(InputRefused.class)
                .hasMessage("the altitude screw of rig 'fork' moves the axis sideways. Give whether a clockwise turn"
                        + " raises or lowers it.");
    }

    @Test
    void excessiveTiltOfTheBase_isRefused() {
        assertThatThrownBy(() -> rig(RIGHT, RAISES, 30, List.of()))
                .isInstanceOf(InputRefused.class)
                .hasMessage("base level uncertainty of 30.0 degrees is outside 0 to 20. Correct the rig file.");
        assertThatThrownBy(() -> rig(RIGHT, RAISES, Double.NaN, List.of())).isInstanceOf(InputRefused.class);
    }

    @Test
    void negativeClampingShift_isRefused() {
        assertThatThrownBy(() -> new Rig(
                        "fork",
                        MountKind.FORK_ON_WEDGE,
                        RIGHT,
                        RAISES,
                        Angle.ofDegrees(1),
                        Angle.ofDegrees(-1),
                        List.of()))
                .isInstanceOf(InputRefused.class)
                .hasMessage("clamping shift of -1.0 degrees is outside 0 to 20. Correct the rig file.");
    }

    @Test
    void twoOpticsWithOneName_areRefused() {
        Optic other = new Optic("Finder", Angle.ofDegrees(5), View.NAKED_EYE, Optional.empty());

        assertThatThrownBy(() -> rig(RIGHT, RAISES, 1, List.of(FINDER, other)))
                .isInstanceOf(InputRefused.class)
                .hasMessage("rig 'fork' has two optics named 'Finder'. Give each its own name.");
    }

    @Test
    void zeroField_isRefused() {
        assertThatThrownBy(() -> new Optic("finder", Angle.ZERO, View.NAKED_EYE, Optional.empty()))
                .isInstanceOf(InputRefused.class)
                .hasMessage("a field width of 0.0 degrees for 'finder' is outside 0 to 60. Give the true field:"
                        + " eyepiece apparent field / magnification.");
    }

    @Test
    void zeroReticleDivision_isRefused() {
        assertThatThrownBy(() ->
                        new Optic("reticle", Angle.ofDegrees(0.4), View.NAKED_EYE, Optional.of(Angle.ofArcseconds(-2))))
                .isInstanceOf(InputRefused.class)
                .hasMessage("a reticle division of -2.0 arcseconds is not above 0. Give the angle of one division.");
    }

    @Test
    void onlyTheUprightFork_hasNoPolarAxis() {
        for (MountKind kind : MountKind.values()) {
            assertThat(kind.hasPolarAxis()).isEqualTo(kind != MountKind.FORK_UPRIGHT);
        }
    }

    private static Rig rig(Screw azimuth, Screw altitude, double levelDeg, List<Optic> optics) {
        return new Rig(
                "fork",
                MountKind.FORK_ON_WEDGE,
                azimuth,
                altitude,
                Angle.ofDegrees(levelDeg),
                Angle.ofArcminutes(2),
                optics);
    }
}
