package polewright.alignment.sighting;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** One measurement that constrains the axis, as it was read, with its uncertainty. */
public sealed interface Sighting permits TypedReading, TurnedFrames, FieldDrift, CentredStars {
    /** When it was made; for a drift, when it began. */
    Instant at();

    /**
     * A copy made later by this amount, or earlier if negative. Frames keep their camera's times, from which their
     * directions were computed.
     */
    Sighting movedBy(Duration shift);

    /** When it was finished: the same time unless it took a while. */
    Instant ended();

    /** The same readings at the correct site, for a sighting that depends on the site. */
    Sighting atCorrectedSite(SiteCorrection correction);

    /** The same readings through the correct optic; unchanged if they were not made through it. */
    Sighting throughCorrectedOptic(OpticCorrection correction);

    /** Its kind in plain words: "star drift". */
    String kind();

    /**
     * Its row in the table of kinds that a log knows.
     *
     * @throws IllegalStateException for {@link CentredStars}, which are logged one by one
     */
    SightingFormat format();

    /** Writes what was measured, so that {@link SightingFormat#read} gives back an equal sighting. */
    void write(FieldWriter out);

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
     * Itself, as a reading of an instrument whose error is common to all readings while the tripod is not moved, so that
     * many count as one.
     *
     * @return empty if each measurement has an independent error
     */
    Optional<InstrumentReading> instrumentReading();

    /**
     * Whether it is one reading of the sky by eye, with an independent error that grows on a night of poor seeing or cold
     * hands. Frames and tables of centrings estimate their own scatter; a compass, a level and a shadow have an error
     * common to all readings.
     */
    boolean isReadByEye();

    /** Whether a person typed it and may have mistyped it, unlike camera frames. */
    boolean isEnteredByHand();

    /** Plausible mistakes, the likeliest first. Tried only when the sighting contradicts the rest. */
    List<Misreading> misreadings();

    /** The same sighting with each star that could have been mistaken for the named one. */
    default List<Misreading> otherStars(Site site, Weather weather) {
        return List.of();
    }

    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /**
     * One method for each kind, for higher layers. A new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R compass(CompassBearing sighting);

        R scale(LevelledScale sighting);

        R bearing(BodyBearing sighting);

        R altitude(BodyAltitude sighting);

        R stillPoint(StillPoint sighting);

        R drift(StarDrift sighting);

        R trail(StarTrail sighting);

        R frames(TurnedFrames sighting);

        R fieldDrift(FieldDrift sighting);

        R centredStars(CentredStars sighting);
    }
}
