package polewright.simulation.practice;

import java.time.Duration;
import polewright.simulation.SimulatedFork;
import polewright.simulation.SimulatedPhotographer;
import polewright.simulation.camera.AmpGlow;
import polewright.simulation.camera.CameraOptics;
import polewright.simulation.camera.Detector;
import polewright.simulation.camera.Distortion;
import polewright.simulation.camera.FrameRenderer;
import polewright.simulation.camera.PixelFaults;
import polewright.simulation.camera.RenderedFrame;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.SkyConditions;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;

/** The camera of a practice night. Its frames are rendered on request, the same every time. */
public final class PracticeCamera {
    static final Duration EXPOSURE = Duration.ofSeconds(2);

    /** 1152 by 864 pixels of 7.7″, 2.5° by 1.9°: small to be fast, wide to have enough stars. */
    static final SimulatedCamera CAMERA = SimulatedCamera.of(
            "Wren 1",
            new CameraOptics(100, 40, 4.5, 0.06, 0.1, Distortion.radial(0.001), false),
            Detector.ofGuideCamera(1152, 864, 3.75, new AmpGlow(2, 120), new PixelFaults(20_265, 4e-5, 40, 1e-5)));

    private PracticeCamera() {}

    /**
     * The frame that an action took.
     *
     * @param number of the frame, from 1
     * @throws InputRefused if there is no such frame
     */
    public static RenderedFrame frame(PracticeState night, int number) {
        for (int index = 0; index < night.done().size(); index++) {
            CompletedAction done = night.done().get(index);
            if (done.seen() instanceof ObservedReadings.FrameTaken taken && taken.number() == number) {
                return drawn(night.scenario(), done, taken, index);
            }
        }
        throw new InputRefused("frame " + number + " was not taken", "take it first");
    }

    private static RenderedFrame drawn(
            Scenario scenario, CompletedAction done, ObservedReadings.FrameTaken taken, int index) {
        SimulatedPhotographer photographer = new SimulatedPhotographer(
                new FrameRenderer(StarAtlas.bundled()),
                CAMERA,
                scenario.site(),
                scenario.weather(),
                SkyConditions.COUNTRY);
        SimulatedFork fork = SimulatedFork.on(done.wedge(), scenario.tube(), taken.middle())
                .pointed(
                        taken.turned(), Angle.QUARTER_TURN.times(scenario.site().hemisphereSign()), taken.middle());
        return photographer.take(fork, taken.middle(), EXPOSURE, scenario.randomOfAction(index));
    }
}
