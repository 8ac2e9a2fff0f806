package polewright.report.text;

import java.util.Locale;
import polewright.alignment.sighting.BodyAltitude;
import polewright.alignment.sighting.BodyBearing;
import polewright.alignment.sighting.CentredStars;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.FieldDrift;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StarTrail;
import polewright.alignment.sighting.StillPoint;
import polewright.alignment.sighting.TurnedFrames;
import polewright.sky.PlainNumber;

/** A sighting in one line, as it was read. */
final class SightingWords implements Sighting.Visitor<String> {
    private static final SightingWords WORDS = new SightingWords();

    private SightingWords() {}

    static String of(Sighting sighting) {
        return sighting.accept(WORDS);
    }

    @Override
    public String compass(CompassBearing sighting) {
        return "compass " + AngleWords.read(sighting.magneticBearing()) + ", declination "
                + AngleWords.read(sighting.declination());
    }

    @Override
    public String scale(LevelledScale sighting) {
        return "level and scale " + AngleWords.read(sighting.altitude());
    }

    @Override
    public String bearing(BodyBearing sighting) {
        return "axis " + AngleWords.read(sighting.clockwise()) + " clockwise of "
                + (sighting.line() == BodyBearing.Line.SHADOW ? "the shadow from " : "the line toward ")
                + sighting.body().label();
    }

    @Override
    public String altitude(BodyAltitude sighting) {
        return "axis " + AngleWords.read(sighting.axisAboveBody()) + " above "
                + sighting.body().label();
    }

    @Override
    public String stillPoint(StillPoint sighting) {
        return "centre of rotation: " + sighting.star().label() + " "
                + PlainNumber.asRead(sighting.distance().count()) + " "
                + sighting.distance().unit().words() + " toward "
                + AngleWords.clockAsTyped(sighting.toward()) + ", view "
                + sighting.view().orientation().name().toLowerCase(Locale.ROOT);
    }

    @Override
    public String drift(StarDrift sighting) {
        return "drift: " + sighting.star().label() + " "
                + PlainNumber.asRead(sighting.drift().count()) + " "
                + sighting.drift().unit().words() + " " + sighting.direction().words() + " in "
                + EventWords.minutes(PlainNumber.asRead(sighting.length().toMillis() / 60000.0));
    }

    @Override
    public String trail(StarTrail sighting) {
        return "trail: " + sighting.star().label() + " swings "
                + AngleWords.read(sighting.towardNorth().abs())
                + (sighting.towardNorth().radians() < 0 ? " south" : " north") + " of its trail";
    }

    @Override
    public String frames(TurnedFrames sighting) {
        return FrameWords.event(sighting);
    }

    @Override
    public String fieldDrift(FieldDrift sighting) {
        return FrameWords.event(sighting);
    }

    @Override
    public String centredStars(CentredStars sighting) {
        return sighting.stars().size() + " centred stars";
    }
}
