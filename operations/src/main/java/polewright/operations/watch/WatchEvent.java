package polewright.operations.watch;

import polewright.operations.camera.DecodedFrame;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.attitude.CameraAttitude;

/** What happens while a folder is watched, in the order in which it does. */
public sealed interface WatchEvent {
    /** A file that was passed over, or something that stands in the way, in one line. */
    record Noted(String line) implements WatchEvent {}

    /** A new frame is there: its pixels, before anything is known of them. */
    record Arrived(DecodedFrame frame) implements WatchEvent {}

    /** Its place in the sky is known, and how its camera stood over the ground. */
    record Placed(PlacedFrame frame, CameraAttitude attitude) implements WatchEvent {}

    /**
     * A frame that nothing can be made of.
     *
     * @param frame name of its file
     * @param line why, and what to do
     */
    record Refused(String frame, String line) implements WatchEvent {}

    /** What a placed frame told: of the axis, or of the screws. */
    record Told(PlacedFrame frame, CameraAttitude attitude, WatchStep step) implements WatchEvent {}

    /** An event went into the log. */
    record Logged(WatchLog.Entry entry) implements WatchEvent {}

    /** One did not; the watch goes on. */
    record NotLogged(String line) implements WatchEvent {}

    /** The watch is over, and what it had to log is logged. */
    record Ended() implements WatchEvent {}
}
