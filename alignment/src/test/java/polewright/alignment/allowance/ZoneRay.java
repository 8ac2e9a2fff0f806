package polewright.alignment.allowance;

import polewright.mount.AxisOffset;

/** Rays outward from a zone's best aim. */
final class ZoneRay {
    private ZoneRay() {}

    /**
     * Distance from the best aim to the polygon's edge, arcminutes.
     *
     * @param angle from east through up, rad
     */
    static double reach(WorkZone zone, double angle) {
        double east = Math.cos(angle);
        double up = Math.sin(angle);
        double least = Double.POSITIVE_INFINITY;
        for (ZoneEdge edge : zone.edges()) {
            AxisOffset along = edge.to().minus(edge.from());
            AxisOffset out = edge.from().minus(zone.bestAim());
            double rises = east * along.up().arcminutes() - up * along.east().arcminutes();
            double reach = (out.east().arcminutes() * along.up().arcminutes()
                            - out.up().arcminutes() * along.east().arcminutes())
                    / rises;
            if (rises > 0 && reach >= 0) {
                least = Math.min(least, reach);
            }
        }
        return least;
    }
}
