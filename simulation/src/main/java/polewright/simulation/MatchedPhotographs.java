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
 * Attitudes by way of pixels: each frame is drawn of the sky over the hidden wedge, its stars are found and matched to
 * the atlas, with no more known of it than a person knows.
 *
 * @param photographer who takes the frames
 * @param sky of which they are drawn
 * @param near how near to the pole that is up the tube points, at most
 * @param exposure of each frame
 * @param random the frames' noise
 * @param album is shown each frame when it has been matched
 */
public record MatchedPhotographs(
        SimulatedPhotographer photographer,
        DrawnSky sky,
        Angle near,
        Duration exposure,
        RandomGenerator random,
        Consumer<Photograph> album)
        implements AttitudeTaker {
    // What a header says of a focal length (common practice: reducers and spacings are seldom told).
    private static final double OPTICS_TRUSTED_TO = 0.2;
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
                ScaleRange.about(photographer.camera().scalePerPixel(), OPTICS_TRUSTED_TO),
                Optional.empty(),
                2000 + (middle.getEpochSecond() - J2000_SECONDS) / SECONDS_IN_A_JULIAN_YEAR);
    }
}
