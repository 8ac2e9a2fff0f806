package polewright.image.star;

/** A peak, the image laid through it, and the star that this makes. */
record Measured(Peak peak, Fit fit, FoundStar star) {
    double distanceTo(Measured other) {
        return Math.hypot(star.x() - other.star.x(), star.y() - other.star.y());
    }
}
