package polewright.app.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.app.camera.PlacedFrame;
import polewright.app.watch.WatchStep;
import polewright.axis.camera.ScrewsSoFar;
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
    public static String startedAfresh() {
        return "The frames before are too long ago to go with this one, so the axis is found afresh."
                + " Turn right ascension by 30 to 90 degrees, nothing else, and take another frame.";
    }

    /** How far the screws have gone, and what is left; fits a line of a terminal. */
    public static String screws(PlacedFrame frame, WatchStep.ScrewsFollowed followed) {
        String clock = frame.at().map(AxisWords::clock).orElse(frame.name());
        ScrewsSoFar soFar = followed.soFar();
        String moved =
                side(soFar.azimuthMoved(), " right", " left") + ", " + side(soFar.altitudeMoved(), " up", " down");
        if (followed.goodEnough()) {
            return clock + "  moved " + moved + ". STOP: good enough.";
        }
        return clock + "  moved " + moved + ". Left: alt "
                + turns(followed.left().altitude()) + ", az "
                + turns(followed.left().azimuth());
    }

    /** What is left to turn, a tagged line a screw, for whoever has a hand on it. */
    public static List<String> left(WatchStep.ScrewsFollowed followed) {
        if (followed.goodEnough()) {
            return List.of("STOP  good enough: let go of the screws.");
        }
        List<String> lines = new ArrayList<>();
        addLeft(lines, "altitude", followed.left().altitude());
        addLeft(lines, "azimuth", followed.left().azimuth());
        return lines;
    }

    /** As near as a hand turns while it is being told: a sixteenth. */
    public static double rounded(double turns) {
        return Math.rint(turns * SIXTEENTHS) / SIXTEENTHS;
    }

    private static void addLeft(List<String> lines, String screw, double turns) {
        double sixteenths = rounded(turns);
        lines.add(
                sixteenths == 0
                        ? "STILL  " + screw + " screw: nothing left to turn."
                        : "TURN  " + screw + " screw " + Fractions.turns(sixteenths)
                                + (turns > 0 ? " clockwise." : " counter-clockwise."));
    }

    /** What the screws have done since the axis was found. */
    public static String moved(WatchStep.ScrewsFollowed followed) {
        ScrewsSoFar soFar = followed.soFar();
        return "Since it was found the axis has moved " + side(soFar.azimuthMoved(), " right", " left") + ", "
                + side(soFar.altitudeMoved(), " up", " down") + ".";
    }

    private static String side(Angle moved, String positive, String negative) {
        return AngleWords.size(moved) + (moved.radians() >= 0 ? positive : negative);
    }

    private static String turns(double turns) {
        return String.format(Locale.ROOT, "%.2f %s", Math.abs(turns), turns >= 0 ? "cw" : "ccw");
    }
}
