package polewright.axis.allowance;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.place.Site;

/**
 * The edge of the zone, found by looking outward from a point inside.
 *
 * <p>Twice coarsely, to see the zone's shape and which limits matter; then in rays that are evenly spread after the zone
 * has been squeezed to be about round, so that a narrow one is drawn as well as a round one. The limits are linear for
 * all this; at the end each corner is moved to where the exact motion is as long as it may be, and what little bulges
 * inward for that is made straight.
 *
 * @param polygon the zone, arcminutes
 * @param limits those that matter to its edge
 */
record ZoneOutline(ConvexPolygon polygon, List<LinearLimit> limits) {
    private static final int COARSE_RAYS = 60;
    private static final int RAYS = 240;
    // A limit this many times farther out than the edge wherever one looks does not matter.
    private static final double FAR = 1.5;
    private static final int CORNER_HALVINGS = 14;
    private static final double NEVER_MOVED_MORE_THAN = 0.25;

    /** From a point at which no limit is used up. */
    static ZoneOutline around(Site site, List<LinearLimit> limits, Vector2D inside) {
        List<Ray> first = new Spread(inside, Squeeze.NONE).rays(COARSE_RAYS, limits);
        ConvexPolygon rough = polygon(first);
        Spread squeezed = new Spread(rough.centroid(), Squeeze.of(rough));
        List<LinearLimit> near = squeezed.near(limits);
        ConvexPolygon better = polygon(squeezed.rays(COARSE_RAYS, near));
        Spread fine = new Spread(better.centroid(), Squeeze.of(better));
        List<Vector2D> corners = new ArrayList<>();
        for (Ray ray : fine.withCorners(fine.rays(RAYS, near), near)) {
            corners.add(exactEnd(site, ray));
        }
        return new ZoneOutline(withoutDents(corners), near);
    }

    /** How far it is to the edge in one direction. */
    private record Ray(Vector2D from, double angleRad, Vector2D step, double reach, LinearLimit limit) {
        Vector2D end() {
            return from.add(reach, step);
        }
    }

    /** Rays from a point, spread evenly over the squeezed zone. */
    private record Spread(Vector2D from, Squeeze squeeze) {
        List<Ray> rays(int count, List<LinearLimit> limits) {
            List<Ray> rays = new ArrayList<>(count);
            for (int i = 0; i < count; i++) {
                rays.add(ray(2 * Math.PI * i / count, limits));
            }
            return rays;
        }

        Ray ray(double angleRad, List<LinearLimit> limits) {
            Vector2D step = squeeze.undone(Math.cos(angleRad), Math.sin(angleRad));
            double least = Double.POSITIVE_INFINITY;
            LinearLimit nearest = limits.get(0);
            for (LinearLimit limit : limits) {
                double reach = limit.reach(from, step.getX(), step.getY());
                if (reach < least) {
                    least = reach;
                    nearest = limit;
                }
            }
            return new Ray(from, angleRad, step, least, nearest);
        }

        /** The limits that come near the edge anywhere. */
        List<LinearLimit> near(List<LinearLimit> limits) {
            List<Ray> rays = rays(COARSE_RAYS, limits);
            return limits.stream()
                    .filter(limit -> rays.stream()
                            .anyMatch(ray -> limit.reach(from, ray.step.getX(), ray.step.getY()) <= FAR * ray.reach))
                    .toList();
        }

        /** With two more rays wherever one limit gives way to another, close to either side of it. */
        List<Ray> withCorners(List<Ray> rays, List<LinearLimit> limits) {
            List<Ray> all = new ArrayList<>(rays.size() * 2);
            for (int i = 0; i < rays.size(); i++) {
                Ray before = rays.get(i);
                Ray after = rays.get((i + 1) % rays.size());
                all.add(before);
                if (before.limit.exact().cause() != after.limit.exact().cause()
                        || !before.limit
                                .exact()
                                .item()
                                .equals(after.limit.exact().item())) {
                    double low = before.angleRad;
                    double high = low + 2 * Math.PI / rays.size();
                    Ray last = before;
                    Ray next = after;
                    for (int k = 0; k < CORNER_HALVINGS; k++) {
                        double middle = (low + high) / 2;
                        Ray ray = ray(middle, limits);
                        if (ray.limit.equals(before.limit)) {
                            low = middle;
                            last = ray;
                        } else {
                            high = middle;
                            next = ray;
                        }
                    }
                    all.add(last);
                    all.add(next);
                }
            }
            return all;
        }
    }

    private static ConvexPolygon polygon(List<Ray> rays) {
        return new ConvexPolygon(rays.stream().map(Ray::end).toList());
    }

    /** Newton's method along the ray, with the slope of the linear limit. */
    private static Vector2D exactEnd(Site site, Ray ray) {
        LinearLimit limit = ray.limit;
        double reach = ray.reach;
        for (int i = 0; i < 2; i++) {
            Vector2D end = ray.from.add(reach, ray.step);
            Vector2D nearer = ray.from.add(0.999 * reach, ray.step);
            double slope =
                    (limit.share(end.getX(), end.getY()) - limit.share(nearer.getX(), nearer.getY())) / (0.001 * reach);
            if (!(slope > 0)) {
                break;
            }
            double change = (1 - limit.exact().share(TriedAxis.of(site, end))) / slope;
            double most = NEVER_MOVED_MORE_THAN * reach;
            reach += Math.max(-most, Math.min(most, change));
        }
        return ray.from.add(reach, ray.step);
    }

    private static ConvexPolygon withoutDents(List<Vector2D> corners) {
        List<Vector2D> kept = new ArrayList<>(corners);
        boolean changed = true;
        while (changed && kept.size() > 3) {
            changed = false;
            for (int i = 0; i < kept.size() && kept.size() > 3; i++) {
                Vector2D before = kept.get((i + kept.size() - 1) % kept.size());
                Vector2D here = kept.get(i);
                Vector2D after = kept.get((i + 1) % kept.size());
                if (ConvexPolygon.cross(here.subtract(before), after.subtract(here)) <= 0) {
                    kept.remove(i);
                    i--;
                    changed = true;
                }
            }
        }
        return new ConvexPolygon(kept);
    }
}
