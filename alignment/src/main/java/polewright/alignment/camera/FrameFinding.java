package polewright.alignment.camera;

import java.time.Duration;
import java.util.List;
import polewright.sky.angle.Angle;

/** A sign in the frames that the axis found from them may be wrong. Frames are counted from 1 in order of exposure. */
public sealed interface FrameFinding {
    /** Two frames: nothing checks that only right ascension was turned. */
    record Unchecked() implements FrameFinding {}

    /** The turn is small, which magnifies errors of the frames in the axis. */
    record SmallTurn(Angle turn) implements FrameFinding {}

    /**
     * Four frames or more, and one of them can be identified as inconsistent with the others.
     *
     * @param suspect which
     * @param causes the possible causes, the likeliest first
     */
    record Disturbed(FrameExplanations.Suspect suspect, List<FrameExplanations.Explanation> causes)
            implements FrameFinding {}

    /**
     * The frames do not close, and the inconsistent one cannot be identified: the uncertainty covers all possibilities.
     *
     * @param frames their number
     * @param farthest largest residual of a frame from the others
     * @param causes the possible causes, the likeliest first
     */
    record DoesNotClose(int frames, Angle farthest, List<FrameExplanations.Explanation> causes)
            implements FrameFinding {}

    /**
     * The frames disagree by more than their own uncertainties, but by so little that flexure of fork, tube or camera
     * bracket is the best explanation.
     *
     * @param farthest largest residual of a frame
     * @param frame which one that is
     * @param sigmas root mean square residual in units of the frames' own uncertainties
     */
    record NotRigid(Angle farthest, int frame, double sigmas) implements FrameFinding {}

    /** Stars are not visible with the Sun so high: the clock or the site is wrong. */
    record SunTooHigh(int frame, Angle sunAltitude) implements FrameFinding {}

    /** The field was below the horizon: the clock or the site is wrong. */
    record BelowHorizon(int frame, Angle altitude) implements FrameFinding {}

    /** Long enough for a mount to settle or warm up. */
    record FarApartInTime(Duration span) implements FrameFinding {}

    /** An implausibly large offset: the clock or site is wrong, or more than right ascension was turned. */
    record FarFromPole(Angle distance) implements FrameFinding {}

    /**
     * Between two frames at one position in right ascension the mount neither stood still nor tracked the sky: the
     * clock or the drive's rate is wrong.
     *
     * @param after the earlier of the two
     * @param turnedWest rotation of the mount
     * @param skyTurned rotation of the sky
     */
    record NeitherTracksNorStands(int after, Angle turnedWest, Angle skyTurned) implements FrameFinding {}

    /** The drive's state differs from the one stated. */
    record DriveNotAsTold(Drive told, Drive found) implements FrameFinding {}

    /**
     * While the screws were turned, right ascension turned by other than the drive's motion, or the camera rolled in
     * its holder.
     *
     * @param west rotation beyond the drive's, westward
     */
    record RightAscensionTurned(Angle west) implements FrameFinding {}

    /**
     * The axis moved farther from where it was found than screws usually take it: they were turned the wrong way, or
     * something else moved.
     */
    record MovedTooFar(Angle distance) implements FrameFinding {}
}
