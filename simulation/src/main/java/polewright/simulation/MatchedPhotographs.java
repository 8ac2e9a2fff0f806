package polewright.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import polewright.image.match.MatchHint;
import polewright.image.match.MatchOutcome;
import polewright.image.match.MatchedFrame;
import polewright.image.match.ScaleRange;
import polewright.image.match.SkyPatch;
import polewright.image.match.Unmatched;
import polewright.image.star.StarFinder;
import polewright.simulation.camera.RenderedFrame;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.SkyTime;

/**
 * Measures attitudes from pixels: each frame is rendered from the sky over the hidden wedge, and its stars are found
 * and matched to the atlas with no more prior knowledge than an observer has.
 *
 * @param photographer takes the frames
 * @param sky from which they are rendered
 * @param near largest distance of the tube from the elevated pole
 * @param exposure of each frame
 * @param random the frames' noise
 * @param album receives each frame once it has been matched
 */
public record MatchedPhotographs(
        SimulatedPhotographer photographer,
        DrawnSky sky,
        Angle near,
        Duration exposure,
        RandomGenerator random,
        Consumer<Photograph> album)
        implements AttitudeTaker {
    // Accuracy of a focal length in a header (common practice: reducers and spacings are seldom recorded).
    private static final double FOCAL_LENGTH_ACCURACY = 0.2;
    private static final double J2000_SECONDS = 946_728_000;
    private static final double SECONDS_IN_A_JULIAN_YEAR = 365.25 * 86_400;

    @Override
    public CameraAttitude take(SimulatedFork fork, Instant middle) {
        RenderedFrame rendered = photographer.take(fork, middle, exposure, random);
        MatchOutcome outcome = sky.matcher().match(StarFinder.find(rendered.frame()), hint(middle));
        if (outcome instanceof Unmatched failed) {
            throw new InputRefused(failed.reason(), failed.remedy()).at("the frame taken at " + middle);
        }
        MatchedFrame match = (MatchedFrame) outcome;
        CameraAttitude attitude = match.attitude(
                ObservingMoment.of(photographer.site(), SkyTime.of(middle), photographer.weather()), sky.atlas());
        album.accept(new Photograph(rendered, match, attitude));
        return attitude;
    }

    private MatchHint hint(Instant middle) {
        return new MatchHint(
                Optional.of(SkyPatch.aroundPole(photographer.site().isNorthern(), near)),
                ScaleRange.about(photographer.camera().scalePerPixel(), FOCAL_LENGTH_ACCURACY),
                Optional.empty(),
                2000 + (middle.getEpochSecond() - J2000_SECONDS) / SECONDS_IN_A_JULIAN_YEAR);
    }
}
