package polewright.alignment.camera;

/**
 * What may have happened besides turning right ascension, so that frames do not close on one axis.
 *
 * @param kind what
 * @param frame counted from 1 in order of exposure: the first frame after a move, or the one frame that it concerns; 0
 *     where it concerns all of them
 */
public record FrameDisturbance(Kind kind, int frame) {
    /** The kinds, the everyday ones first. */
    public enum Kind {
        /** Fork, tube and camera flex a little, differently in each frame. */
        GIVE(0.95),
        /** The tube droops: the more the lower it points. */
        DROOP(0.02),
        /** Tripod, wedge or mount was knocked between two frames and stayed so: the axis itself moved. */
        MOUNT_BUMPED(0.01),
        /** The tube moved in declination between two frames. */
        DECLINATION_MOVED(0.008),
        /** Camera, focuser or tube slipped or rolled between two frames. */
        CAMERA_SLIPPED(0.005),
        /** Knocked during an exposure, after which the mount stayed in its new place. */
        BUMPED_WHILE_EXPOSED(0.01),
        /** One frame alone is astray: knocked and swung back, or placed wrongly. */
        FRAME_ASTRAY(0.003),
        /** The time of one frame is wrong. */
        TIME_WRONG(0.003);

        private final double chance;

        Kind(double chance) {
            this.chance = chance;
        }

        /**
         * How often it happens in a set of frames, wherever in it. No statistics of such mishaps are known to us: rare
         * ones differ by no more than a factor of three, so that the frames decide and not these figures.
         */
        double chance() {
            return chance;
        }

        /** Whether it happens between two frames, not at one. */
        public boolean isBetweenFrames() {
            return this == MOUNT_BUMPED || this == DECLINATION_MOVED || this == CAMERA_SLIPPED;
        }
    }

    /** Whether it is nothing that happened at one of the frames. */
    boolean concernsAll() {
        return frame == 0;
    }
}
