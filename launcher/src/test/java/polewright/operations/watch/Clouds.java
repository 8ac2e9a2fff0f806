package polewright.operations.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import polewright.image.Frame;
import polewright.image.FrameFacts;

/** A frame that shows only sky background. */
final class Clouds {
    private Clouds() {}

    static Frame frame() {
        SplittableRandom random = new SplittableRandom(7);
        float[] pixels = new float[640 * 480];
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = (float) Math.rint(500 + 10 * random.nextGaussian());
        }
        return new Frame(
                640,
                480,
                pixels,
                65_535,
                new FrameFacts(
                        Optional.of(Instant.parse("2026-11-25T20:03:00Z")),
                        Optional.empty(),
                        Optional.of(Duration.ofSeconds(2)),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.empty()));
    }
}
