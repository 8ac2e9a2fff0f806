package polewright.alignment.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** The figures of the typical fork: a 6° finder, a 0.8° eyepiece, a 0.4° reticle. */
class WorkPresetTest {
    private static final Rig FORK = Rig.typicalForkOnWedge();
    private static final Camera GUIDE = new Camera("guide camera", 240, 3.75, 1280, 960);
    private static final Camera MAIN = new Camera("main camera", 1800, 3.76, 4144, 2822);

    private static Rig withoutOptics() {
        return new Rig(
                "bare",
                FORK.kind(),
                FORK.azimuthScrew(),
                FORK.altitudeScrew(),
                FORK.levelSigma(),
                FORK.clampSigma(),
                List.of());
    }

    @Test
    void casualLook_usesTheWidestEyepiece_notTheFinder() {
        VisualObservation look = (VisualObservation) WorkPreset.CASUAL_LOOK.with(FORK);
        assertThat(look.field().degrees()).isCloseTo(0.8, within(1e-9));
        assertThat(look.goToWithin().orElseThrow().arcminutes()).isCloseTo(24, within(1e-9));
        assertThat(look.region()).isEqualTo(SkyRegion.Above.THIRTY_DEGREES);
    }

    @Test
    void lookByHand_hasTheWidestEyepiece_andNoGoTo() {
        VisualObservation look = (VisualObservation) WorkPreset.LOOK_BY_HAND.with(FORK);
        assertThat(look.field().degrees()).isCloseTo(0.8, within(1e-9));
        assertThat(look.goToWithin()).isEmpty();
        assertThat(look.driftRoom().arcminutes()).isCloseTo(12, within(1e-9));
    }

    @Test
    void planets_areObservedInTheNarrowestField_andFoundInTheWidest() {
        VisualObservation look = (VisualObservation) WorkPreset.PLANETS.with(FORK);
        assertThat(look.field().degrees()).isCloseTo(0.4, within(1e-9));
        assertThat(look.goToWithin().orElseThrow().arcminutes()).isCloseTo(24, within(1e-9));
    }

    @Test
    void rigWithoutEyepieces_usesCommonOnes() {
        assertThat(((VisualObservation) WorkPreset.CASUAL_LOOK.with(withoutOptics()))
                        .field()
                        .degrees())
                .isCloseTo(0.8, within(1e-9));
        assertThat(((VisualObservation) WorkPreset.PLANETS.with(withoutOptics()))
                        .field()
                        .degrees())
                .isCloseTo(0.25, within(1e-9));
    }

    @Test
    void imaging_usesTheCameraWithTheLongestFocalLength() {
        ImagingRun shot = (ImagingRun) WorkPreset.LONG_GUIDED_SUBS.with(FORK.withCameras(List.of(GUIDE, MAIN)));
        assertThat(shot.camera()).isEqualTo(MAIN);
        assertThat(shot.subExposure()).isEqualTo(Duration.ofMinutes(5));
        assertThat(shot.guiding()).isEqualTo(new Guiding.Guided(Angle.ofArcminutes(30)));
        // 0.43″ per pixel: the seeing is wider.
        assertThat(shot.tolerance().arcseconds()).isCloseTo(3, within(1e-9));
    }

    @Test
    void guideStar_isOutsideAWidePicture() {
        // 1280 × 960 pixels of 3.22″: 43′ to the corner.
        assertThat(WorkPreset.usualGuideStar(GUIDE).arcminutes()).isCloseTo(43, within(0.1));
    }

    @Test
    void pixelWiderThanTheSeeing_setsTheTolerance() {
        ImagingRun shot = WorkPreset.SHORT_SUBS.with(GUIDE);
        assertThat(shot.guiding()).isEqualTo(new Guiding.Unguided());
        assertThat(shot.tolerance().arcseconds()).isCloseTo(1.5 * 3.2229, within(1e-3));
    }

    @ParameterizedTest
    @EnumSource(names = {"SHORT_SUBS", "LONG_GUIDED_SUBS"})
    void imagingWithoutACamera_isRefused(WorkPreset preset) {
        assertThatThrownBy(() -> preset.with(FORK))
                .isInstanceOf(InputRefused.class)
                .hasMessage(preset.words()
                        + " need a camera, and the rig has none. Give its focal length and the width of a pixel, or"
                        + " add it to the rig file.");
    }

    @ParameterizedTest
    @EnumSource(names = {"CASUAL_LOOK", "LOOK_BY_HAND", "PLANETS"})
    void visualObservation_hasNoCamera(WorkPreset preset) {
        assertThatThrownBy(() -> preset.with(MAIN))
                .isInstanceOf(InputRefused.class)
                .hasMessage("no camera is used for " + preset.words() + ". Leave out the camera options.");
    }
}
