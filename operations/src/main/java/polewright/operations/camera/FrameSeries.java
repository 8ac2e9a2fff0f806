package polewright.operations.camera;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import polewright.sky.InputRefused;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * Frames of one camera at one site, each with its time.
 *
 * @param frames in order of exposure
 * @param attitudes of them, in the same order
 */
public record FrameSeries(List<PlacedFrame> frames, List<CameraAttitude> attitudes) {
    public FrameSeries {
        frames = List.copyOf(frames);
        attitudes = List.copyOf(attitudes);
    }

    /** A frame and the attitude of its camera relative to the horizon. */
    private record Standing(PlacedFrame frame, CameraAttitude attitude) {}

    /** Placed frames, sorted by exposure time. */
    public static FrameSeries of(List<PlacedFrame> placed, Site site, Weather weather) {
        List<Standing> standing = new ArrayList<>();
        placed.forEach(frame -> standing.add(new Standing(frame, attitude(frame, site, weather))));
        standing.sort(Comparator.comparing(s -> s.attitude().at()));
        return new FrameSeries(
                standing.stream().map(Standing::frame).toList(),
                standing.stream().map(Standing::attitude).toList());
    }

    /** The attitude, relative to the horizon, of the camera at a frame whose time is known. */
    public static CameraAttitude attitude(PlacedFrame frame, Site site, Weather weather) {
        Instant at = frame.at().orElseThrow();
        try {
            return frame.match().attitude(ObservingMoment.of(site, SkyTime.of(at), weather), StarAtlas.bundled());
        } catch (InputRefused refused) {
            throw refused.at(frame.name());
        }
    }

    /** The last frame taken. */
    public Optional<PlacedFrame> last() {
        return frames.isEmpty() ? Optional.empty() : Optional.of(frames.get(frames.size() - 1));
    }
}
