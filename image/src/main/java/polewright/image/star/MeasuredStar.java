package polewright.image.star;

/** A peak, the image fitted to it, and the resulting star. */
record MeasuredStar(Peak peak, Fit fit, FoundStar star) {
    double distanceTo(MeasuredStar other) {
        return Math.hypot(star.x() - other.star.x(), star.y() - other.star.y());
    }
}
