package polewright.simulation.camera;

import java.util.random.RandomGenerator;

/**
 * A satellite that crossed the picture during the exposure.
 *
 * @param x0 column of one end, pixels; may lie outside the picture
 * @param y0 row of that end
 * @param x1 column of the other end
 * @param y1 row of that end
 * @param electronsPerPixel charge left along each pixel of its length, over the width of the trail
 */
public record SatelliteTrail(double x0, double y0, double x1, double y1, double electronsPerPixel) {
    /** A trail across the whole picture, at a random place and angle. */
    public static SatelliteTrail across(SimulatedCamera camera, double electronsPerPixel, RandomGenerator random) {
        double width = camera.detector().width();
        double height = camera.detector().height();
        double x = width * (0.2 + 0.6 * random.nextDouble());
        double y = height * (0.2 + 0.6 * random.nextDouble());
        double direction = Math.PI * random.nextDouble();
        double reach = Math.hypot(width, height);
        double dx = reach * Math.cos(direction);
        double dy = reach * Math.sin(direction);
        return new SatelliteTrail(x - dx, y - dy, x + dx, y + dy, electronsPerPixel);
    }
}
