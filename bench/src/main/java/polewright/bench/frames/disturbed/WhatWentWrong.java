package polewright.bench.frames.disturbed;

/** The faults in a set of frames. */
enum WhatWentWrong {
    NOTHING("nothing; fork and tube give", false, Asked.NOTHING),
    TRIPOD_BUMPED("tripod bumped 15' before the third", true, Asked.INSIDE_AND_NAMED),
    DECLINATION_MOVED("tube moved 1 degree in declination before a frame", true, Asked.INSIDE_AND_NAMED),
    BUMPED_WHILE_EXPOSED("bumped 5' to 15' during an exposure", false, Asked.INSIDE_AND_NAMED),
    BUMPED_A_LITTLE_WHILE_EXPOSED("bumped 1' to 5' during an exposure", false, Asked.NOTHING),
    TRIPOD_BUMPED_ANYWHERE("tripod bumped 1' to 30' before any frame", true, Asked.NOTHING),
    CAMERA_SLIPPED("camera slipped or rolled 2' to 30' before a frame", true, Asked.NOTHING),
    HEADER_TIME_WRONG("time of one header wrong by 1 to 60 minutes", false, Asked.NOTHING),
    FRAME_ASTRAY("one frame 1' to 20' astray", false, Asked.NOTHING);

    /** Whether criteria are set for it. */
    enum Asked {
        NOTHING,
        INSIDE_AND_NAMED
    }

    final String words;
    /** Whether it happens between two frames. */
    final boolean betweenFrames;

    final Asked asked;

    WhatWentWrong(String words, boolean betweenFrames, Asked asked) {
        this.words = words;
        this.betweenFrames = betweenFrames;
        this.asked = asked;
    }

    boolean isInAnExposure() {
        return this == BUMPED_WHILE_EXPOSED || this == BUMPED_A_LITTLE_WHILE_EXPOSED;
    }
}
