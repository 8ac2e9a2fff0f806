package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.alignment.advice.FollowedScrews;
import polewright.operations.camera.PlacedFrame;
import polewright.operations.watch.WatchStep;
import polewright.sky.angle.Angle;

/** The result of a watched frame in one line. */
public final class WatchWords {
    private static final int SIXTEENTHS = 16;

    private WatchWords() {}

    public static String passedOver(int files) {
        return files == 1
                ? "One file was already there and is ignored (--all includes it)."
                : files + " files were already there and are ignored (--all includes them).";
    }

    /** What to do while there is no fix yet. */
    public static String placed(WatchStep.Placed placed) {
        return placed.places() == 1
                ? "Turn right ascension by 30 to 90 degrees, and nothing else. Then take another frame."
                : "Not far enough yet. Turn right ascension further and take another frame.";
    }

    /** That the earlier frames no longer count, and what to do. */
    public static String startedAfresh(WatchStep.StartedAfresh afresh) {
        return afresh.slew()
                        .map(far -> "The camera points somewhere else, as after a slew: to explain it, the screws would"
                                + " have"
                                + " to have moved the axis " + AngleWords.size(far) + ".")
                        .orElse("The earlier frames are too old to combine with this one.")
                + " Starting again from this frame: turn right ascension by 30 to 90 degrees, and nothing else, then"
                + " take"
                + " another frame.";
    }

    /** How far the axis has moved on the sky, and what to turn now; fits a line of a terminal. */
    public static String screws(PlacedFrame frame, WatchStep.ScrewsFollowed followed) {
        String moved = movedTo(frame, followed);
        return followed.goodEnough()
                ? moved + "STOP: good enough."
                : moved + "Turn alt " + order(followed.orders().altitude()) + ", az "
                        + order(followed.orders().azimuth());
    }

    /** How far the axis has moved, for use next to the instruction that follows. */
    public static String movedTo(PlacedFrame frame, WatchStep.ScrewsFollowed followed) {
        String clock = frame.at().map(AxisWords::clock).orElse(frame.name());
        return clock + "  moved " + offset(followed) + " (sky). ";
    }

    /** What the last frame shows about the screws themselves, the most serious first, a sentence or two each. */
    public static List<String> notes(WatchStep.ScrewsFollowed followed) {
        List<String> notes = new ArrayList<>(wrongWays(followed.azimuthWentWrong(), followed.altitudeWentWrong()));
        addBeyond(notes, "altitude", followed.orders().altitude());
        addBeyond(notes, "azimuth", followed.orders().azimuth());
        if (followed.isSenseAssumed() && !followed.goodEnough()) {
            notes.add("Screw directions are assumed until the first turn has been checked. Make this turn, then take a"
                    + " frame.");
        }
        followed.soFar().findings().forEach(finding -> notes.add(FrameWords.of(finding)));
        return notes;
    }

    /** A sentence for each screw that moved the axis away from the aim in the last frame. */
    static List<String> wrongWays(
            Optional<FollowedScrews.WrongWay> azimuth, Optional<FollowedScrews.WrongWay> altitude) {
        List<String> ways = new ArrayList<>();
        azimuth.ifPresent(way -> ways.add("Azimuth went " + word(way) + ". Turn the other way."));
        altitude.ifPresent(way -> ways.add("Altitude went " + word(way) + ". Turn the other way."));
        return ways;
    }

    private static void addBeyond(List<String> notes, String screw, FollowedScrews.Order order) {
        if (order.isBeyondTheScrew()) {
            notes.add(
                    "The " + screw + " screw would need more turns than most wedges have. Move the mount by hand first,"
                            + " then take two new frames.");
        }
    }

    private static String word(FollowedScrews.WrongWay way) {
        return way.name().toLowerCase(Locale.ROOT);
    }

    /** What to turn now, a tagged line per screw, for an observer with a hand on it. */
    public static List<Line> remaining(WatchStep.ScrewsFollowed followed) {
        if (followed.goodEnough()) {
            return List.of(Tag.STOP.line("good enough. Let go of the screws."));
        }
        List<Line> lines = new ArrayList<>();
        addOrder(lines, "altitude", followed.orders().altitude());
        addOrder(lines, "azimuth", followed.orders().azimuth());
        return lines;
    }

    /** As fine as a hand turns during instructions: a sixteenth. */
    public static double rounded(double turns) {
        return Math.rint(turns * SIXTEENTHS) / SIXTEENTHS;
    }

    private static void addOrder(List<Line> lines, String screw, FollowedScrews.Order order) {
        double sixteenths = rounded(order.clockwiseTurns());
        if (sixteenths == 0) {
            lines.add(Tag.DONE.line(screw + " screw: nothing left to turn."));
            return;
        }
        String way = order.isWayUnknown()
                ? " the other way than before"
                : sixteenths > 0 ? " clockwise" : " counter-clockwise";
        lines.add(Tag.TURN.line(screw + " screw " + (order.isBeyondTheScrew() ? "over " : "")
                + Fractions.turns(sixteenths) + way + (order.isTrial() ? ", to see which way it goes." : ".")));
    }

    /** The effect of the screws since the axis was found. */
    public static String moved(WatchStep.ScrewsFollowed followed) {
        return "Moved since it was found: " + offset(followed) + " on the sky.";
    }

    /** In the same measure as the axis offset: azimuth about the vertical is larger by 1 / cos latitude. */
    private static String offset(WatchStep.ScrewsFollowed followed) {
        Angle east = followed.moved().east();
        Angle up = followed.moved().up();
        Angle larger = east.abs().compareTo(up.abs()) > 0 ? east : up;
        return AngleWords.sizeLike(larger, east)
                + (east.radians() >= 0 ? " east, " : " west, ")
                + AngleWords.sizeLike(larger, up)
                + (up.radians() >= 0 ? " up" : " down");
    }

    private static String order(FollowedScrews.Order order) {
        double size = Math.abs(order.clockwiseTurns());
        String turns = String.format(Locale.ROOT, size < 9.995 ? "%.2f" : "%.1f", size);
        String way = order.isWayUnknown() ? " back" : order.clockwiseTurns() >= 0 ? " cw" : " ccw";
        return (order.isBeyondTheScrew() ? "over " : "") + turns + way + (order.isTrial() ? " (trial)" : "");
    }
}
