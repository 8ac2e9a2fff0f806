package polewright.app.text;

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
            return List.of("The horizon is open all round: nothing has been told of it.");
        }
        List<String> lines = new ArrayList<>();
        lines.add("The skyline, from north through east:");
        horizon.points()
                .forEach(point -> lines.add("  azimuth " + tenths(point.azimuth()) + " ("
                        + AngleWords.compassPoint(point.azimuth()) + "): " + tenths(point.altitude()) + " high"));
        return lines;
    }

    private static String tenths(Angle angle) {
        return PlainNumber.of(Math.rint(angle.degrees() * 10) / 10) + "°";
    }
}
