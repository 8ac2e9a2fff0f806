package polewright.simulation.camera;

import java.time.Duration;
import java.time.Instant;
import polewright.sky.InputRefused;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * The conditions of one exposure.
 *
 * @param path the camera's attitude during it
 * @param weather the air that refracts the light
 * @param sky seeing, background and transparency
 * @param middle of the exposure, UTC
 * @param length how long the shutter is open
 */
public record Exposure(
        SimulatedCamera camera,
        CameraPath path,
        Site site,
        Weather weather,
        SkyConditions sky,
        Instant middle,
        Duration length) {
    public Exposure {
        if (length.isNegative() || length.isZero() || length.compareTo(Duration.ofHours(1)) > 0) {
            throw new InputRefused(
                    "an exposure of " + length + " cannot be rendered", "give more than nothing, up to 1 hour");
        }
    }

    double seconds() {
        return length.toNanos() / 1e9;
    }

    /** The sky at a time in the exposure. */
    ObservingMoment momentAt(double secondsFromMiddle) {
        return ObservingMoment.of(site, SkyTime.of(middle.plusNanos(Math.round(secondsFromMiddle * 1e9))), weather);
    }
}
