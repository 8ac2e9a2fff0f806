package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;

/** The skyline in words. */
public final class HorizonWords {
    private HorizonWords() {}

    public static List<String> of(Horizon horizon) {
        if (horizon.points().isEmpty()) {
            return List.of("Open horizon: no skyline entered.");
        }
        List<String> lines = new ArrayList<>();
        lines.add("The skyline, from north through east:");
        horizon.points()
                .forEach(point -> lines.add("  azimuth " + degrees(point.azimuth()) + " ("
                        + AngleWords.compassPoint(point.azimuth()) + "): " + degrees(point.altitude()) + " high"));
        return lines;
    }

    private static String degrees(Angle angle) {
        return PlainNumber.asRead(angle.degrees()) + "°";
    }
}
