package polewright.mount.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import polewright.sky.InputRefused;

class CameraTest {
    private static final Camera GUIDE = new Camera("guide camera", 240, 3.75, 1280, 960);

    /** The handbook rule: 206.265 times micrometres over millimetres is arcseconds per pixel. */
    @Test
    void pixelScale_followsFromPixelSizeAndFocalLength() {
        assertThat(GUIDE.perPixel().arcseconds()).isCloseTo(206.265 * 3.75 / 240, within(1e-4));
        assertThat(GUIDE.field().degrees()).isCloseTo(960 * 206.265 * 3.75 / 240 / 3600, within(1e-3));
    }

    @Test
    void rollIsLessCertainThanTheCentre_byTheSizeOfTheField() {
        var covariance = GUIDE.usualCovariance();
        assertThat(covariance.centreSigma().arcseconds()).isCloseTo(0.2 * 3.223 / Math.sqrt(30), within(1e-3));
        // The root mean square distance of stars from the centre, 462 pixels, is the lever arm.
        assertThat(covariance.rollSigma().arcseconds())
                .isCloseTo(0.2 / Math.sqrt(30) / Math.sqrt((1280.0 * 1280 + 960 * 960) / 12) * 206265, within(0.1));
    }

    @Test
    void bestCamera_hasALargeEnoughField_andTheBestAccuracy() {
        Camera tooNarrow = new Camera("main", 2800, 3.76, 3000, 2000);
        Camera wide = new Camera("lens", 50, 4, 600, 400);
        Rig rig = Rig.typicalForkOnWedge();
        assertThat(rig.bestCamera()).isEmpty();
        assertThat(rig.withCameras(List.of(tooNarrow)).bestCamera()).isEmpty();
        assertThat(rig.withCameras(List.of(tooNarrow, wide, GUIDE)).bestCamera())
                .contains(GUIDE);
    }

    @Test
    void impossibleFiguresAreRefused() {
        assertThatThrownBy(() -> new Camera("guide", 0, 3.75, 1280, 960))
                .isInstanceOf(InputRefused.class)
                .hasMessage("a focal length of 0 mm for camera 'guide' is outside 1 to 20000. Correct the rig file.");
        assertThatThrownBy(() -> new Camera("guide", 240, Double.NaN, 1280, 960))
                .isInstanceOf(InputRefused.class);
        assertThatThrownBy(() -> new Camera("guide", 240, 3.75, 1280, -1))
                .hasMessage("a height of -1 pixels for camera 'guide' is outside 64 to 100000. Correct the rig file.");
    }

    @Test
    void cameraNamedLikeAnOpticIsRefused() {
        Rig rig = Rig.typicalForkOnWedge();
        Camera finder = new Camera("Finder", 240, 3.75, 1280, 960);
        assertThatThrownBy(() -> rig.withCameras(List.of(finder)))
                .isInstanceOf(InputRefused.class)
                .hasMessage("rig 'fork' has two optics or cameras named 'Finder'. Give each its own name.");
    }
}
