package polewright.image.star;

import java.util.List;
import polewright.image.Frame;

/** Finds the saturation value for a file that does not give it: many peaks, all cut off at exactly the same value. */
final class SaturationLevel {
    private static final int PEAKS = 200;
    private static final int FEWEST_TOUCHING = 3;

    private SaturationLevel() {}

    /** The value that the brightest peaks share with their neighbours; infinite if none are equal. */
    static float of(Frame frame, List<Peak> peaks) {
        float highest = Float.NEGATIVE_INFINITY;
        int alike = 0;
        for (Peak peak : peaks.subList(0, Math.min(PEAKS, peaks.size()))) {
            float top = Float.NEGATIVE_INFINITY;
            int touching = 0;
            for (int y = Math.max(0, peak.y() - 1); y <= Math.min(frame.height() - 1, peak.y() + 1); y++) {
                for (int x = Math.max(0, peak.x() - 1); x <= Math.min(frame.width() - 1, peak.x() + 1); x++) {
                    float value = frame.pixels()[y * frame.width() + x];
                    if (value > top) {
                        top = value;
                        touching = 0;
                    }
                    touching += value == top ? 1 : 0;
                }
            }
            if (top > highest) {
                highest = top;
                alike = 0;
            }
            alike = top == highest ? Math.max(alike, touching) : alike;
        }
        return alike >= FEWEST_TOUCHING ? highest : Float.POSITIVE_INFINITY;
    }
}
