package polewright.alignment.allowance;

/**
 * One motion that must not be too long.
 *
 * @param item the item of work that asks for it
 * @param cause what goes wrong if it is longer
 * @param motion the motion
 * @param wormArcsec what the worm may add to it along right ascension, either way
 * @param toleranceArcsec how long it may be
 */
record MotionLimit(String item, LimitCause cause, ImageMotion motion, double wormArcsec, double toleranceArcsec) {
    /** How much of the tolerance is used by an axis: up to 1 all is well. */
    double share(CandidateAxis axis) {
        var shift = motion.shift(axis);
        return Math.hypot(Math.abs(shift.getX()) + wormArcsec, shift.getY()) / toleranceArcsec;
    }
}
