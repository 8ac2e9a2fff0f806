package polewright.image.star;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import polewright.image.Frame;

/**
 * A connected region of pixels around a bright peak, of any shape.
 *
 * @param x centre of its light
 * @param y centre of its light
 * @param shape second moments of its light
 * @param pixels their number
 */
record Blob(double x, double y, StarShape shape, int pixels) {
    private static final int MOST_PIXELS = 3000;
    private static final double LEAST_PEAK = 8;
    private static final double EDGE = 3.5;
    private static final double EDGE_OF_PEAK = 0.15;
    // Fewer pixels are a hot one with its neighbours.
    private static final int LEAST_PIXELS = 5;

    /** Length of the straight line that has the same moments when a point of light moves along it. */
    double length() {
        return Math.sqrt(12 * Math.max(0, shape.majorVariance() - shape.minorVariance()));
    }

    /**
     * The blobs of the highest peaks, each once; without blobs that continue indefinitely, like a satellite's trail.
     */
    static List<Blob> of(List<Peak> peaks, Frame frame, BackgroundMesh mesh, int most) {
        List<Blob> blobs = new ArrayList<>();
        Set<Integer> seen = new HashSet<>();
        for (Peak peak : peaks.subList(0, Math.min(peaks.size(), 20 * most))) {
            if (blobs.size() == most) {
                break;
            }
            grow(peak, frame, mesh, seen).ifPresent(blobs::add);
        }
        return blobs;
    }

    private static Optional<Blob> grow(Peak peak, Frame frame, BackgroundMesh mesh, Set<Integer> seen) {
        int width = frame.width();
        float[] pixels = frame.pixels();
        double sky = mesh.skyAt(peak.x(), peak.y());
        double noise = mesh.noiseAt(peak.x(), peak.y());
        int start = peak.y() * width + peak.x();
        double top = (pixels[start] - sky) / noise;
        if (!(top > LEAST_PEAK) || seen.contains(start)) {
            return Optional.empty();
        }
        double edge = Math.max(EDGE, EDGE_OF_PEAK * top);
        Deque<Integer> waiting = new ArrayDeque<>();
        waiting.add(start);
        seen.add(start);
        int count = 0;
        double sum = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        while (!waiting.isEmpty() && count <= MOST_PIXELS) {
            int at = waiting.remove();
            double dx = at % width - peak.x();
            double dy = at / width - peak.y();
            double light = pixels[at] - sky;
            count++;
            sum += light;
            sx += light * dx;
            sy += light * dy;
            sxx += light * dx * dx;
            sxy += light * dx * dy;
            syy += light * dy * dy;
            for (int y = Math.max(0, at / width - 1); y <= Math.min(frame.height() - 1, at / width + 1); y++) {
                for (int x = Math.max(0, at % width - 1); x <= Math.min(width - 1, at % width + 1); x++) {
                    int next = y * width + x;
                    if ((pixels[next] - sky) / noise > edge && seen.add(next)) {
                        waiting.add(next);
                    }
                }
            }
        }
        if (count < LEAST_PIXELS || count > MOST_PIXELS) {
            return Optional.empty();
        }
        double mx = sx / sum;
        double my = sy / sum;
        StarShape shape = new StarShape(sxx / sum - mx * mx, sxy / sum - mx * my, syy / sum - my * my);
        return Optional.of(new Blob(peak.x() + mx, peak.y() + my, shape, count));
    }
}
