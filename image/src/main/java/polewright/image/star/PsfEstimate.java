package polewright.image.star;

import java.util.Optional;

/**
 * The PSF of a frame.
 *
 * @param point shape of an untrailed star
 * @param beta of its profile, see {@link PointFit}
 * @param trail motion of the stars, if any
 */
record PsfEstimate(StarShape point, double beta, Optional<TrailField> trail) {
    // A shorter trail is described as well by an ellipse.
    private static final double LONG_SIGMAS = 4;

    /** The same, narrower by a factor. */
    PsfEstimate sharper(double factor) {
        double square = factor * factor;
        return new PsfEstimate(
                new StarShape(square * point.xx(), square * point.xy(), square * point.yy()), beta, trail);
    }

    /** Shape at a position, including motion. */
    StarShape shapeAt(double x, double y) {
        if (trail.isEmpty()) {
            return point;
        }
        double tx = trail.get().x(x, y);
        double ty = trail.get().y(x, y);
        return new StarShape(point.xx() + tx * tx / 12, point.xy() + tx * ty / 12, point.yy() + ty * ty / 12);
    }

    /** The trail at a position, if it is too long for an ellipse. */
    Optional<StarImage.Trail> trailAt(double x, double y) {
        return trail.filter(t -> t.length(x, y) > LONG_SIGMAS * point.sigma())
                .map(t -> new StarImage.Trail(1, t.length(x, y), t.directionRad(x, y), point.sigma()));
    }
}
