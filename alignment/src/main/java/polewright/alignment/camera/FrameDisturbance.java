package polewright.alignment.camera;

/**
 * An event besides the turn in right ascension that keeps frames from closing on one axis.
 *
 * @param kind the kind of event
 * @param frame counted from 1 in order of exposure: the first frame after a move, or the single frame affected; 0 if
 *     all are affected
 */
public record FrameDisturbance(Kind kind, int frame) {
    /** The kinds, the ordinary ones first. */
    public enum Kind {
        /** Fork, tube and camera flex a little, differently in each frame. */
        GIVE(0.95),
        /** The tube sags: the more the lower it points. */
        DROOP(0.02),
        /** Tripod, wedge or mount was knocked between two frames and stayed there: the axis itself moved. */
        MOUNT_BUMPED(0.01),
        /** The tube moved in declination between two frames. */
        DECLINATION_MOVED(0.008),
        /** Camera, focuser or tube slipped or rolled between two frames. */
        CAMERA_SLIPPED(0.005),
        /** Knocked during an exposure, and the mount stayed in its new position. */
        BUMPED_WHILE_EXPOSED(0.01),
        /** One frame alone is wrong: knocked and swung back, or wrongly solved. */
        FRAME_ASTRAY(0.003),
        /** The time of one frame is wrong. */
        TIME_WRONG(0.003);

        private final double chance;

        Kind(double chance) {
            this.chance = chance;
        }

        /**
         * Prior probability in a set of frames, at any of them. We know of no statistics of such mishaps: the rare ones
         * differ by at most a factor of three, so that the frames decide and not these figures.
         */
        double chance() {
            return chance;
        }

        /** Whether it happens between two frames, not at one. */
        public boolean isBetweenFrames() {
            return this == MOUNT_BUMPED || this == DECLINATION_MOVED || this == CAMERA_SLIPPED;
        }
    }

    /** Whether it affects all frames. */
    boolean affectsAllFrames() {
        return frame == 0;
    }
}
