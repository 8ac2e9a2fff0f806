package polewright.operations.watch;

import polewright.operations.camera.DecodedFrame;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.attitude.CameraAttitude;

/** The events of watching a folder, in the order in which they happen. */
public sealed interface WatchEvent {
    /** A file that was skipped, or a problem, in one line. */
    record Noted(String line) implements WatchEvent {}

    /** A new frame: its pixels, before anything is known about them. */
    record Arrived(DecodedFrame frame) implements WatchEvent {}

    /** Its place in the sky is known, and the attitude of its camera. */
    record Placed(PlacedFrame frame, CameraAttitude attitude) implements WatchEvent {}

    /**
     * A frame that cannot be used.
     *
     * @param frame name of its file
     * @param line why, and what to do
     */
    record Refused(String frame, String line) implements WatchEvent {}

    /** The result of a placed frame for the axis or for the screws. */
    record Told(PlacedFrame frame, CameraAttitude attitude, WatchStep step) implements WatchEvent {}

    /** An event was logged. */
    record Logged(WatchLog.Entry entry) implements WatchEvent {}

    /** An event could not be logged; the watch continues. */
    record NotLogged(String line) implements WatchEvent {}

    /** The watch is over, and everything it had to log is logged. */
    record Ended() implements WatchEvent {}
}
