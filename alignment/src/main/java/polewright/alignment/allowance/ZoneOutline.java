package polewright.alignment.allowance;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.sky.place.Site;

/**
 * The edge of the zone, found by casting rays from an interior point.
 *
 * <p>Two coarse passes find the zone's shape and the limits that matter. The final rays are spaced evenly after the
 * zone has been normalised to be roughly round, so that a narrow zone is drawn as well as a round one. The coarse
 * passes use the limits to first order, the final rays to second; at the end each corner is moved to the exact limit,
 * and dents are straightened.
 *
 * @param polygon the zone, arcminutes
 * @param limits those that matter to its edge
 */
record ZoneOutline(ConvexPolygon polygon, List<ShapedLimit> limits) {
    private static final int COARSE_RAYS = 40;
    private static final int RAYS = 240;
    // A limit this many times farther out than the edge in every direction does not matter.
    private static final double FAR = 1.25;
    // Second order moves a limit by no more than 0.0017 of its distance for each arcminute of offset (tan 80°), one
    // outward and another inward: of two limits farther apart than this the nearer remains the nearer.
    private static final double SECOND_ORDER_PER_ARCMIN = 0.0035;
    private static final double LEAST_HOLLOW_ARCMIN = 0.01;
    private static final int CORNER_HALVINGS = 14;
    private static final double NEVER_MOVED_MORE_THAN = 0.25;

    /** From a point at which every limit has some tolerance left. */
    static ZoneOutline around(Site site, List<ShapedLimit> limits, Vector2D inside) {
        List<Ray> first = new Spread(inside, ZoneNormalisation.NONE).rays(COARSE_RAYS, limits);
        ConvexPolygon rough = polygon(first);
        Spread squeezed = new Spread(rough.centroid(), ZoneNormalisation.of(rough));
        List<ShapedLimit> near = squeezed.near(limits);
        ConvexPolygon better = polygon(squeezed.rays(COARSE_RAYS, near));
        Spread fine = new Spread(better.centroid(), ZoneNormalisation.of(better));
        List<Vector2D> corners = new ArrayList<>();
        for (Ray ray : fine.withCorners(fine.bentRays(RAYS, near), near)) {
            corners.add(exactEnd(site, ray));
        }
        return new ZoneOutline(withoutDents(corners), near);
    }

    /** The distance to the edge in one direction. */
    private record Ray(Vector2D from, double angleRad, Vector2D step, double reach, ShapedLimit limit) {
        Vector2D end() {
            return from.add(reach, step);
        }
    }

    /** Rays from a point, spaced evenly over the normalised zone. */
    private record Spread(Vector2D from, ZoneNormalisation squeeze) {
        List<Ray> rays(int count, List<ShapedLimit> limits) {
            return IntStream.range(0, count)
                    .mapToObj(i -> ray(2 * Math.PI * i / count, limits))
                    .toList();
        }

        List<Ray> bentRays(int count, List<ShapedLimit> limits) {
            return IntStream.range(0, count)
                    .mapToObj(i -> secondOrderRay(2 * Math.PI * i / count, limits))
                    .toList();
        }

        Ray ray(double angleRad, List<ShapedLimit> limits) {
            Vector2D step = squeeze.denormalised(Math.cos(angleRad), Math.sin(angleRad));
            double least = Double.POSITIVE_INFINITY;
            ShapedLimit nearest = limits.get(0);
            for (ShapedLimit limit : limits) {
                double reach = limit.reach(from, step.getX(), step.getY());
                if (reach < least) {
                    least = reach;
                    nearest = limit;
                }
            }
            return new Ray(from, angleRad, step, least, nearest);
        }

        /** To second order. */
        Ray secondOrderRay(double angleRad, List<ShapedLimit> limits) {
            Ray straight = ray(angleRad, limits);
            Vector2D step = straight.step;
            double bendsBy = 1.005 + SECOND_ORDER_PER_ARCMIN * straight.end().getNorm();
            double least = Double.POSITIVE_INFINITY;
            ShapedLimit nearest = straight.limit;
            for (ShapedLimit limit : limits) {
                double reach = limit.reach(from, step.getX(), step.getY());
                if (reach < bendsBy * Math.min(least, straight.reach)) {
                    double bent = limit.secondOrderReach(from, step.getX(), step.getY(), reach);
                    if (bent < least) {
                        least = bent;
                        nearest = limit;
                    }
                }
            }
            return new Ray(from, angleRad, step, least, nearest);
        }

        /** The limits that come near the edge anywhere. */
        List<ShapedLimit> near(List<ShapedLimit> limits) {
            List<Ray> rays = rays(COARSE_RAYS, limits);
            return limits.stream()
                    .filter(limit -> rays.stream()
                            .anyMatch(ray -> limit.reach(from, ray.step.getX(), ray.step.getY()) <= FAR * ray.reach))
                    .toList();
        }

        /** Adds two rays wherever the limiting motion changes, one close to each side of the change. */
        List<Ray> withCorners(List<Ray> rays, List<ShapedLimit> limits) {
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
                        Ray ray = secondOrderRay(middle, limits);
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

    /** Newton's method along the ray, with the limit's second-order slope. */
    private static Vector2D exactEnd(Site site, Ray ray) {
        ShapedLimit limit = ray.limit;
        double reach = ray.reach;
        for (int i = 0; i < 2; i++) {
            Vector2D end = ray.from.add(reach, ray.step);
            Vector2D nearer = ray.from.add(0.999 * reach, ray.step);
            double slope = (limit.secondOrderShare(end.getX(), end.getY())
                            - limit.secondOrderShare(nearer.getX(), nearer.getY()))
                    / (0.001 * reach);
            if (!(slope > 0)) {
                break;
            }
            double change = (1 - limit.exact().share(CandidateAxis.of(site, end))) / slope;
            double most = NEVER_MOVED_MORE_THAN * reach;
            reach += Math.max(-most, Math.min(most, change));
        }
        return ray.from.add(reach, ray.step);
    }

    /**
     * The corners made convex. A guided field near a celestial pole leaves a slightly banana-shaped zone: on its
     * concave side the edge is drawn halfway between the concave outline and the line across it.
     */
    private static ConvexPolygon withoutDents(List<Vector2D> corners) {
        List<Integer> kept = hull(corners);
        ConvexPolygon straightened =
                new ConvexPolygon(kept.stream().map(corners::get).toList());
        for (int i = 0; i < kept.size(); i++) {
            int from = kept.get(i);
            int to = kept.get((i + 1) % kept.size());
            Vector2D along = corners.get(to).subtract(corners.get(from)).normalize();
            double hollow = 0;
            for (int k = (from + 1) % corners.size(); k != to; k = (k + 1) % corners.size()) {
                hollow = Math.max(
                        hollow, ConvexPolygon.cross(along, corners.get(k).subtract(corners.get(from))));
            }
            if (hollow > LEAST_HOLLOW_ARCMIN) {
                straightened = straightened.cut(corners.get(from), along, hollow / 2);
            }
        }
        return straightened;
    }

    /** Indices of the corners that turn left: seen from an interior point, all of them go round anticlockwise. */
    private static List<Integer> hull(List<Vector2D> corners) {
        List<Integer> kept =
                new ArrayList<>(IntStream.range(0, corners.size()).boxed().toList());
        boolean changed = true;
        while (changed && kept.size() > 3) {
            changed = false;
            for (int i = 0; i < kept.size() && kept.size() > 3; i++) {
                Vector2D before = corners.get(kept.get((i + kept.size() - 1) % kept.size()));
                Vector2D here = corners.get(kept.get(i));
                Vector2D after = corners.get(kept.get((i + 1) % kept.size()));
                if (ConvexPolygon.cross(here.subtract(before), after.subtract(here)) <= 0) {
                    kept.remove(i);
                    i--;
                    changed = true;
                }
            }
        }
        return kept;
    }
}
