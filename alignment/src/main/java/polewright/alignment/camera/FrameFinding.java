package polewright.alignment.camera;

import java.time.Duration;
import java.util.List;
import polewright.sky.angle.Angle;

/** A sign in the frames that the axis found from them may be wrong. Frames are counted from 1 in order of exposure. */
public sealed interface FrameFinding {
    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /** Two frames: nothing checks that only right ascension was turned. */
    record Unchecked() implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.unchecked(this);
        }
    }

    /** The turn is small, which magnifies errors of the frames in the axis. */
    record SmallTurn(Angle turn) implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.smallTurn(this);
        }
    }

    /**
     * Four frames or more, and one of them can be identified as inconsistent with the others.
     *
     * @param suspect which
     * @param causes the possible causes, the likeliest first
     */
    record Disturbed(FrameExplanations.Suspect suspect, List<FrameExplanations.Explanation> causes)
            implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.disturbed(this);
        }
    }

    /**
     * The frames do not close, and the inconsistent one cannot be identified: the uncertainty covers all possibilities.
     *
     * @param frames their number
     * @param farthest largest residual of a frame from the others
     * @param causes the possible causes, the likeliest first
     */
    record DoesNotClose(int frames, Angle farthest, List<FrameExplanations.Explanation> causes)
            implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.doesNotClose(this);
        }
    }

    /**
     * The frames disagree by more than their own uncertainties, but by so little that flexure of fork, tube or camera
     * bracket is the best explanation.
     *
     * @param farthest largest residual of a frame
     * @param frame which one that is
     * @param sigmas root mean square residual in units of the frames' own uncertainties
     */
    record NotRigid(Angle farthest, int frame, double sigmas) implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.notRigid(this);
        }
    }

    /** Stars are not visible with the Sun so high: the clock or the site is wrong. */
    record SunTooHigh(int frame, Angle sunAltitude) implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.sunTooHigh(this);
        }
    }

    /** The field was below the horizon: the clock or the site is wrong. */
    record BelowHorizon(int frame, Angle altitude) implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.belowHorizon(this);
        }
    }

    /** Long enough for a mount to settle or warm up. */
    record FarApartInTime(Duration span) implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.farApartInTime(this);
        }
    }

    /** An implausibly large offset: the clock or site is wrong, or more than right ascension was turned. */
    record FarFromPole(Angle distance) implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.farFromPole(this);
        }
    }

    /**
     * Between two frames at one position in right ascension the mount neither stood still nor tracked the sky: the
     * clock or the drive's rate is wrong.
     *
     * @param after the earlier of the two
     * @param turnedWest rotation of the mount
     * @param skyTurned rotation of the sky
     */
    record NeitherTracksNorStands(int after, Angle turnedWest, Angle skyTurned) implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.neitherTracksNorStands(this);
        }
    }

    /** The drive's state differs from the one stated. */
    record DriveNotAsTold(Drive told, Drive found) implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.driveNotAsTold(this);
        }
    }

    /**
     * While the screws were turned, right ascension turned by other than the drive's motion, or the camera rolled in
     * its holder.
     *
     * @param west rotation beyond the drive's, westward
     */
    record RightAscensionTurned(Angle west) implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.rightAscensionTurned(this);
        }
    }

    /**
     * The axis moved farther from where it was found than screws usually take it: they were turned the wrong way, or
     * something else moved.
     */
    record MovedTooFar(Angle distance) implements FrameFinding {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.movedTooFar(this);
        }
    }

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R unchecked(Unchecked finding);

        R smallTurn(SmallTurn finding);

        R disturbed(Disturbed finding);

        R doesNotClose(DoesNotClose finding);

        R notRigid(NotRigid finding);

        R sunTooHigh(SunTooHigh finding);

        R belowHorizon(BelowHorizon finding);

        R farApartInTime(FarApartInTime finding);

        R farFromPole(FarFromPole finding);

        R neitherTracksNorStands(NeitherTracksNorStands finding);

        R driveNotAsTold(DriveNotAsTold finding);

        R rightAscensionTurned(RightAscensionTurned finding);

        R movedTooFar(MovedTooFar finding);
    }
}
