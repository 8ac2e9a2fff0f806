package polewright.axis.camera;

import java.time.Duration;
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
     * Declination was moved between two frames: the boresight's distance from the axis changed.
     *
     * @param after the last frame before it
     * @param by how far, away from the elevated end of the axis positive
     */
    record DeclinationMoved(int after, Angle by) implements FrameFinding {}

    /**
     * The camera rolled in its holder, or slipped sideways, between two frames.
     *
     * @param after the last frame before it
     * @param by how far the axis moved in the picture, across the line from it to the centre
     */
    record CameraSlipped(int after, Angle by) implements FrameFinding {}

    /**
     * The camera did not keep still against the tube, and no single slip explains it: the tube or its holder bends, or a
     * frame is wrong.
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
