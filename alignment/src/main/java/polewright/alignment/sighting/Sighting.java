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
     * The same, made later by so much, or earlier if that is below zero. Frames keep the times of the camera that took them:
     * where it looked was worked out with those.
     */
    Sighting movedBy(Duration shift);

    /** What kind it is, in plain words: "star drift". */
    String kind();

    /**
     * The measurement model.
     *
     * @throws polewright.sky.InputRefused when the sighting cannot have been made there and then, e.g. the star was
     *     below the horizon
     */
    AxisModel model(Site site, Weather weather);

    /**
     * Where a tube, a camera or a person's eye pointed for it, at the beginning and at the end where that took a while.
     * Near the Sun each of them wants a caution.
     *
     * @return empty when nothing looked at the sky
     */
    List<LineOfSight> linesOfSight(Site site, Weather weather);

    /**
     * The instrument whose error is the same at every reading while the tripod stands in one place, so that many readings
     * are worth one.
     *
     * @return empty when each measurement has an error of its own
     */
    Optional<SharedInstrument> sharedInstrument();

    /** Plausible mistakes, the likeliest first. Tried only when the sighting contradicts the rest. */
    List<Misreading> misreadings();

    /** The same made with another star than the one named, for each that could have been taken for it. */
    default List<Misreading> otherStars(Site site, Weather weather) {
        return List.of();
    }
}
