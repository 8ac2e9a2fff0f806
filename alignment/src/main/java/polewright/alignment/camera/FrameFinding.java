package polewright.alignment.camera;

import java.time.Duration;
import java.util.List;
import polewright.sky.angle.Angle;

/**
 * Something that the frames themselves tell against the axis found from them. Frames are counted from 1 in order of
 * exposure.
 */
public sealed interface FrameFinding {
    /** Two frames: nothing checks that only right ascension was turned. */
    record Unchecked() implements FrameFinding {}

    /** The turn is small, so that errors of the frames come out large in the axis. */
    record SmallTurn(Angle turn) implements FrameFinding {}

    /**
     * Four frames or more, and they say which of them does not go with the others.
     *
     * @param suspect which
     * @param causes what may have happened there, the likeliest first
     */
    record Disturbed(FrameExplanations.Suspect suspect, List<FrameExplanations.Explanation> causes)
            implements FrameFinding {}

    /**
     * The frames do not close, and do not say which of them is to blame: the uncertainty holds all that is possible.
     *
     * @param frames how many there are
     * @param farthest how far the worst frame lies from where the others would have it
     * @param causes what may have happened, the likeliest first
     */
    record DoesNotClose(int frames, Angle farthest, List<FrameExplanations.Explanation> causes)
            implements FrameFinding {}

    /**
     * The frames disagree by more than their own uncertainties, yet by so little that a fork, a tube or a camera's holder
     * that gives a little explains it best.
     *
     * @param farthest how far the worst frame stands off
     * @param frame which one that is
     * @param sigmas how many times worse than the frames' own uncertainties, root mean square
     */
    record NotRigid(Angle farthest, int frame, double sigmas) implements FrameFinding {}

    /** No stars are seen with the Sun so high: the clock or the site is wrong. */
    record SunTooHigh(int frame, Angle sunAltitude) implements FrameFinding {}

    /** The field stood under the horizon: the clock or the site is wrong. */
    record BelowHorizon(int frame, Angle altitude) implements FrameFinding {}

    /** Long enough for a mount to settle or warm through. */
    record FarApartInTime(Duration span) implements FrameFinding {}

    /** No axis is set up so badly: the clock or site is wrong, or more than right ascension was turned. */
    record FarFromPole(Angle distance) implements FrameFinding {}

    /**
     * Between two frames at one place in right ascension the mount neither stood nor followed the sky: the clock is
     * wrong, or the drive's rate.
     *
     * @param after the earlier of the two
     * @param turnedWest how far it turned
     * @param skyTurned how far the sky did
     */
    record NeitherTracksNorStands(int after, Angle turnedWest, Angle skyTurned) implements FrameFinding {}

    /** The drive did otherwise than was told. */
    record DriveNotAsTold(Drive told, Drive found) implements FrameFinding {}

    /**
     * While screws were turned right ascension turned too, otherwise than the drive does; or the camera rolled in its
     * holder.
     *
     * @param west how far beyond the drive, westward
     */
    record RightAscensionTurned(Angle west) implements FrameFinding {}

    /** The axis is farther from where it was found than screws mostly take it: they were turned the wrong way, or more was moved. */
    record MovedTooFar(Angle distance) implements FrameFinding {}
}
