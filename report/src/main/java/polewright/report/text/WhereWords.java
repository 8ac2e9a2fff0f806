package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.angle.Sexagesimal;
import polewright.sky.atlas.Constellation;
import polewright.sky.body.BodyPosition;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;

/** The position of a body in words. */
public final class WhereWords {
    private WhereWords() {}

    /** Where to look first, then the figures. */
    public static List<String> of(BodyPosition seen, Constellation constellation) {
        List<String> lines = new ArrayList<>();
        Angle azimuth = seen.airless().azimuth();
        Angle altitude = seen.refracted().altitude();
        SkyBody body = seen.body();
        String name =
                Character.toUpperCase(body.label().charAt(0)) + body.label().substring(1);
        lines.add(
                altitude.radians() < 0
                        ? name + " is " + AngleWords.degrees(altitude.abs()) + " below the horizon, "
                                + AngleWords.compassPoint(azimuth) + " (azimuth " + AngleWords.bearing(azimuth) + ")."
                        : "Look " + AngleWords.compassPoint(azimuth) + ", azimuth " + AngleWords.bearing(azimuth) + ", "
                                + AngleWords.degrees(altitude) + " up, for " + body.label() + ".");
        lines.add("At " + seen.moment().time().utc() + ", "
                + AngleWords.hourAngle(seen.hourAngle().hourAngle()) + "; true altitude "
                + AngleWords.degrees(seen.airless().altitude()) + ".");
        lines.add("Right ascension " + Sexagesimal.hours(seen.place().rightAscension(), 1) + ", declination "
                + Sexagesimal.degrees(seen.place().declination(), 0) + " (of date, for setting circles), in "
                + constellation.name() + ".");
        if (body != SolarSystemBody.SUN) {
            lines.add("From the Sun: " + AngleWords.degrees(seen.sunDistance()) + ".");
        }
        return lines;
    }
}
