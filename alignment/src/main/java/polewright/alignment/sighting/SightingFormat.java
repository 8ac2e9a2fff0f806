package polewright.alignment.sighting;

import java.time.Instant;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.FieldReader;

/** The kinds of sighting in a log: the word that identifies each, and how it is read back. */
public enum SightingFormat {
    COMPASS("compass", (in, entered, names) -> CompassBearing.read(in, entered)),
    SCALE("scale", (in, entered, names) -> LevelledScale.read(in, entered)),
    BEARING("bearing", (in, entered, names) -> BodyBearing.read(in, entered, BodyBearing.Line.TOWARD_BODY, names)),
    SHADOW("shadow", (in, entered, names) -> BodyBearing.read(in, entered, BodyBearing.Line.SHADOW, names)),
    ALTITUDE("altitude", BodyAltitude::read),
    STILL_POINT("still_point", StillPoint::read),
    DRIFT("drift", StarDrift::read),
    FRAMES("frames", (in, entered, names) -> TurnedFrames.read(in)),
    FIELD_DRIFT("field_drift", (in, entered, names) -> FieldDrift.read(in, entered));

    private final String word;
    private final Reader reader;

    SightingFormat(String word, Reader reader) {
        this.word = word;
        this.reader = reader;
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
        return reader.read(in, entered, names);
    }

    @FunctionalInterface
    private interface Reader {
        Sighting read(FieldReader in, Instant entered, BodyNames names);
    }
}
