package polewright.alignment.allowance;

/**
 * An upper limit on one image motion.
 *
 * @param item the item of work that requires it
 * @param cause what goes wrong if it is exceeded
 * @param motion the motion
 * @param wormArcsec periodic error to allow for along right ascension, in both directions
 * @param toleranceArcsec the limit
 */
record MotionLimit(String item, LimitCause cause, ImageMotion motion, double wormArcsec, double toleranceArcsec) {
    /** The fraction of the tolerance used with an axis; the limit is met up to 1. */
    double share(CandidateAxis axis) {
        var shift = motion.shift(axis);
        return Math.hypot(Math.abs(shift.getX()) + wormArcsec, shift.getY()) / toleranceArcsec;
    }
}
