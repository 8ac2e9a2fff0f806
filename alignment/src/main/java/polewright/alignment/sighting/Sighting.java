package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
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

    /**
     * A copy made later by this amount, or earlier if negative. Frames keep their camera's times, from which their
     * directions were computed.
     */
    Sighting movedBy(Duration shift);

    /** Its kind in plain words: "star drift". */
    String kind();

    /**
     * The measurement model.
     *
     * @throws polewright.sky.InputRefused if the sighting cannot have been made at that place and time, e.g. the star
     *     was below the horizon
     */
    AxisModel model(Site site, Weather weather);

    /**
     * The directions in which a tube, a camera or a person's eye pointed, at the start and, for a longer sighting, at
     * the end. Each of them needs a caution near the Sun.
     *
     * @return empty if nothing was pointed at the sky
     */
    List<LineOfSight> linesOfSight(Site site, Weather weather);

    /**
     * The instrument whose error is common to all readings while the tripod is not moved, so that many readings count
     * as one.
     *
     * @return empty if each measurement has an independent error
     */
    Optional<SharedInstrument> sharedInstrument();

    /**
     * Whether it is one reading of the sky by eye, with an independent error that grows on a night of poor seeing or cold
     * hands. Frames and tables of centrings estimate their own scatter; a compass, a level and a shadow have an error
     * common to all readings.
     */
    boolean isReadByEye();

    /** Plausible mistakes, the likeliest first. Tried only when the sighting contradicts the rest. */
    List<Misreading> misreadings();

    /** The same sighting with each star that could have been mistaken for the named one. */
    default List<Misreading> otherStars(Site site, Weather weather) {
        return List.of();
    }
}
