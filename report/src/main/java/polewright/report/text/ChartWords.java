package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.chart.FieldChart;
import polewright.drawing.chart.GuideStar;
import polewright.mount.rig.Orientation;
import polewright.sky.angle.Angle;

/** The way to an object that is invisible to the eye. */
public final class ChartWords {
    private static final String[] EIGHTHS = {
        "right", "up and right", "up", "up and left", "left", "down and left", "down", "down and right"
    };

    private ChartWords() {}

    /**
     * Its position, then the way there.
     *
     * @param optic the optic used
     */
    public static List<String> of(FieldChart chart, String optic, Optional<GuideStar> guide) {
        Angle azimuth = chart.sky().middle().azimuth();
        Angle altitude = chart.sky().middle().altitude();
        List<String> lines = new ArrayList<>();
        if (altitude.radians() < 0) {
            lines.add(chart.target().label() + " is below the horizon, " + AngleWords.compassPoint(azimuth) + ".");
            return lines;
        }
        lines.add("Look " + AngleWords.compassPoint(azimuth) + ", " + StarFindingWords.fists(altitude) + " up ("
                + AngleWords.degrees(altitude) + "), for " + chart.target().label() + ".");
        guide.ifPresent(star -> lines.add(hop(chart, optic, star)));
        lines.add("The " + optic + " shows " + AngleWords.size(chart.field()) + " of sky, "
                + shown(chart.sky().view().orientation()) + ".");
        return lines;
    }

    private static String hop(FieldChart chart, String optic, GuideStar guide) {
        double fields = guide.distance().radians() / chart.field().radians();
        return "From " + guide.star().label() + " ("
                + AngleWords.compassPoint(guide.direction().azimuth()) + ", "
                + StarFindingWords.fists(guide.direction().altitude()) + " up) go "
                + AngleWords.size(guide.distance()) + " ("
                + String.format(Locale.ROOT, fields < 9.95 ? "%.1f" : "%.0f", fields)
                + " field widths), " + eighth(guide.towardTarget()) + " as seen in the " + optic + ".";
    }

    private static String eighth(Vector2D way) {
        double angle = Math.toDegrees(Math.atan2(way.getY(), way.getX()));
        return EIGHTHS[Math.floorMod(Math.round(angle / 45), EIGHTHS.length)];
    }

    private static String shown(Orientation orientation) {
        return switch (orientation) {
            case ERECT -> "as the eye sees it";
            case INVERTED -> "upside down";
            case MIRRORED -> "left and right swapped";
        };
    }
}
