package polewright.app.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.app.camera.PlacedFrame;
import polewright.app.watch.WatchStep;
import polewright.sky.angle.Angle;

/** What a watched frame tells, in a line. */
public final class WatchWords {
    private static final int SIXTEENTHS = 16;

    private WatchWords() {}

    public static String passedOver(int files) {
        return files == 1
                ? "One file that is there already is passed over (--all takes it)."
                : files + " files that are there already are passed over (--all takes them).";
    }

    /** What to do while the axis is not known yet. */
    public static String placed(WatchStep.Placed placed) {
        return placed.places() == 1
                ? "Turn right ascension by 30 to 90 degrees, nothing else, and take another frame."
                : "That is not far enough yet: turn right ascension on, and take another frame.";
    }

    /** That the frames before no longer count, and what to do. */
    public static String startedAfresh(WatchStep.StartedAfresh afresh) {
        return afresh.slew()
                        .map(far ->
                                "The camera looks elsewhere, as after a slew or with another target: screws would have"
                                        + " to have moved the axis by " + AngleWords.size(far) + ".")
                        .orElse("The frames before are too long ago to go with this one.")
                + " The axis is found again from here: turn right ascension by 30 to 90 degrees, nothing else, and take"
                + " another frame.";
    }

    /** How far the axis has gone on the sky, and which turns remain; fits a line of a terminal. */
    public static String screws(PlacedFrame frame, WatchStep.ScrewsFollowed followed) {
        String clock = frame.at().map(AxisWords::clock).orElse(frame.name());
        String moved = clock + "  moved " + offset(followed) + " (sky). ";
        return followed.goodEnough()
                ? moved + "STOP: good enough."
                : moved + "Turn alt " + turns(followed.remaining().altitude()) + ", az "
                        + turns(followed.remaining().azimuth());
    }

    /** Which turns remain, a tagged line a screw, for the person with a hand on it. */
    public static List<String> remaining(WatchStep.ScrewsFollowed followed) {
        if (followed.goodEnough()) {
            return List.of("STOP  good enough: let go of the screws.");
        }
        List<String> lines = new ArrayList<>();
        addRemaining(lines, "altitude", followed.remaining().altitude());
        addRemaining(lines, "azimuth", followed.remaining().azimuth());
        return lines;
    }

    /** As near as a hand turns while it is being told: a sixteenth. */
    public static double rounded(double turns) {
        return Math.rint(turns * SIXTEENTHS) / SIXTEENTHS;
    }

    private static void addRemaining(List<String> lines, String screw, double turns) {
        double sixteenths = rounded(turns);
        lines.add(
                sixteenths == 0
                        ? "STILL  " + screw + " screw: no turn remains."
                        : "TURN  " + screw + " screw " + Fractions.turns(sixteenths)
                                + (turns > 0 ? " clockwise." : " counter-clockwise."));
    }

    /** What the screws have done since the axis was found. */
    public static String moved(WatchStep.ScrewsFollowed followed) {
        return "Since it was found the axis has moved " + offset(followed) + " on the sky.";
    }

    /** In the measure that says where the axis points, too: azimuth about the vertical is larger by 1 / cos latitude. */
    private static String offset(WatchStep.ScrewsFollowed followed) {
        Angle east = followed.moved().east();
        Angle up = followed.moved().up();
        Angle larger = east.abs().compareTo(up.abs()) > 0 ? east : up;
        return AngleWords.sizeLike(larger, east)
                + (east.radians() >= 0 ? " east, " : " west, ")
                + AngleWords.sizeLike(larger, up)
                + (up.radians() >= 0 ? " up" : " down");
    }

    private static String turns(double turns) {
        double size = Math.abs(turns);
        return String.format(Locale.ROOT, size < 9.995 ? "%.2f %s" : "%.1f %s", size, turns >= 0 ? "cw" : "ccw");
    }
}
