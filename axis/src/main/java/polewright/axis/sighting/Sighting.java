package polewright.axis.sighting;

import java.time.Instant;
import java.util.List;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** One measurement that constrains the axis, as it was read, with its uncertainty. */
public sealed interface Sighting
        permits CompassBearing,
                LevelledScale,
                BodyBearing,
                BodyAltitude,
                StillPoint,
                StarDrift,
                TurnedFrames,
                FieldDrift,
                CentredStars {
    /** When it was made; for a drift, when it began. */
    Instant at();

    /** What kind it is, in plain words: "star drift". */
    String kind();

    /**
     * The measurement model.
     *
     * @throws polewright.sky.InputRefused when the sighting cannot have been made there and then, e.g. the star was
     *     below the horizon
     */
    AxisModel model(Site site, Weather weather);

    /** Plausible mistakes, the likeliest first. Tried only when the sighting contradicts the rest. */
    List<Misreading> misreadings();
}
