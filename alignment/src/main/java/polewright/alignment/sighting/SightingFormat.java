package polewright.alignment.sighting;

import java.time.Instant;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.FieldReader;

/** The kinds of sighting in a log: the word that identifies each, and how it is read back. */
public enum SightingFormat {
    COMPASS("compass"),
    SCALE("scale"),
    BEARING("bearing"),
    SHADOW("shadow"),
    ALTITUDE("altitude"),
    STILL_POINT("still_point"),
    DRIFT("drift"),
    TRAIL("trail"),
    FRAMES("frames"),
    FIELD_DRIFT("field_drift");

    private final String word;

    SightingFormat(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /**
     * The counterpart of {@link Sighting#write}.
     *
     * @param entered when it was entered, the default time of a sighting
     * @throws polewright.sky.InputRefused if the fields are not those of such a sighting
     */
    public Sighting read(FieldReader in, Instant entered, BodyNames names) {
        return switch (this) {
            case COMPASS -> CompassBearing.read(in, entered);
            case SCALE -> LevelledScale.read(in, entered);
            case BEARING -> BodyBearing.read(in, entered, BodyBearing.Line.TOWARD_BODY, names);
            case SHADOW -> BodyBearing.read(in, entered, BodyBearing.Line.SHADOW, names);
            case ALTITUDE -> BodyAltitude.read(in, entered, names);
            case STILL_POINT -> StillPoint.read(in, entered, names);
            case DRIFT -> StarDrift.read(in, entered, names);
            case TRAIL -> StarTrail.read(in, entered, names);
            case FRAMES -> TurnedFrames.read(in);
            case FIELD_DRIFT -> FieldDrift.read(in, entered);
        };
    }
}
