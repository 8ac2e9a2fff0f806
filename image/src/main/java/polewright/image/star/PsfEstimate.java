package polewright.image.star;

import java.util.Optional;

/**
 * What a star of this frame looks like.
 *
 * @param point shape of a star that did not move
 * @param beta of its profile, see {@link PointFit}
 * @param trail how the stars moved, if they did
 */
record PsfEstimate(StarShape point, double beta, Optional<TrailField> trail) {
    // A shorter trail is told as well by an ellipse.
    private static final double LONG_SIGMAS = 4;

    /** The same, narrower by a factor. */
    PsfEstimate sharper(double factor) {
        double square = factor * factor;
        return new PsfEstimate(
                new StarShape(square * point.xx(), square * point.xy(), square * point.yy()), beta, trail);
    }

    /** Shape at a place, movement included. */
    StarShape shapeAt(double x, double y) {
        if (trail.isEmpty()) {
            return point;
        }
        double tx = trail.get().x(x, y);
        double ty = trail.get().y(x, y);
        return new StarShape(point.xx() + tx * tx / 12, point.xy() + tx * ty / 12, point.yy() + ty * ty / 12);
    }

    /** The trail at a place, where it is too long for an ellipse. */
    Optional<StarImage.Trail> trailAt(double x, double y) {
        return trail.filter(t -> t.length(x, y) > LONG_SIGMAS * point.sigma())
                .map(t -> new StarImage.Trail(1, t.length(x, y), t.directionRad(x, y), point.sigma()));
    }
}
