package polewright.report.text;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import polewright.alignment.camera.FrameDisturbance;
import polewright.alignment.camera.FrameExplanations.Explanation;
import polewright.alignment.camera.FrameFinding;
import polewright.sky.angle.Angle;

/** Frames that do not close on one axis, with possible explanations, in words. */
final class DisturbanceWords {
    private static final double ARCSEC_PER_SECOND = 15.041;
    private static final double IN_MINUTES_SECONDS = 120;

    private DisturbanceWords() {}

    /** Four frames or more, one of which is inconsistent. */
    static String of(FrameFinding.Disturbed found) {
        int frame = found.suspect().frame();
        String where = found.suspect().alone()
                ? "frame " + frame + " does not fit the others"
                : "something moved between frames " + (frame - 1) + " and " + frame;
        return where + ". Likely " + causes(found.causes()) + ". The axis and its uncertainty allow for that. "
                + remedy(found.causes().get(0).what().kind());
    }

    /** Three frames cannot show which of them is inconsistent. */
    static String of(FrameFinding.DoesNotClose found) {
        return "the " + found.frames() + " frames do not agree on one axis: one is off by "
                + FrameWords.size(found.farthest()) + ", and " + found.frames()
                + " frames cannot show which. Likely " + causes(found.causes())
                + ". The uncertainty covers each of these. Turn right ascension further and take one more frame.";
    }

    private static String causes(List<Explanation> likeliestFirst) {
        String all = likeliestFirst.stream().map(DisturbanceWords::cause).collect(Collectors.joining("; "));
        return (likeliestFirst.size() == 1 ? "cause: " : "causes: ") + all;
    }

    private static String cause(Explanation explanation) {
        return words(explanation.what(), explanation.size())
                + String.format(Locale.ROOT, " (%.0f %%)", 100 * explanation.probability());
    }

    private static String words(FrameDisturbance what, Angle size) {
        int frame = what.frame();
        String between = " between frames " + (frame - 1) + " and " + frame;
        return switch (what.kind()) {
            case GIVE -> "fork, tube and camera flex a little between frames";
            case DROOP -> "the tube droops";
            case MOUNT_BUMPED -> "the mount was bumped by " + FrameWords.size(size) + between;
            case DECLINATION_MOVED -> "declination moved by " + FrameWords.size(size) + between;
            case CAMERA_SLIPPED -> "the camera slipped or rolled by " + FrameWords.size(size) + between;
            case BUMPED_WHILE_EXPOSED -> "the mount was bumped while frame " + frame + " was exposed";
            case FRAME_ASTRAY -> "frame " + frame + " alone is off by " + FrameWords.size(size);
            case TIME_WRONG ->
                "the time of frame " + frame + " is wrong by " + time(size.arcseconds() / ARCSEC_PER_SECOND);
        };
    }

    private static String time(double seconds) {
        long whole = Math.round(seconds < IN_MINUTES_SECONDS ? seconds : seconds / 60);
        return TimeSpans.of(seconds < IN_MINUTES_SECONDS ? Duration.ofSeconds(whole) : Duration.ofMinutes(whole));
    }

    private static String remedy(FrameDisturbance.Kind kind) {
        return switch (kind) {
            case DECLINATION_MOVED -> "Clamp declination and take the frames again.";
            case CAMERA_SLIPPED -> "Tighten camera and focuser and take the frames again.";
            case TIME_WRONG -> "Check the clock of the camera.";
            default -> "To be sure, take the frames again.";
        };
    }
}
