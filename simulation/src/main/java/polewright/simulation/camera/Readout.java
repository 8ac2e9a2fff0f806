package polewright.simulation.camera;

import java.util.random.RandomGenerator;
import java.util.stream.IntStream;

/** Converts mean charge per pixel into the counts of one frame. */
final class Readout {
    private final Detector detector;

    Readout(Detector detector) {
        this.detector = detector;
    }

    /** Adds noise, blooms the excess and digitises; in place. */
    void read(float[] electrons, RandomGenerator random) {
        int width = detector.width();
        // One seed for each row: the frame is the same however many processors share the rows.
        long[] seeds = random.longs(detector.height()).toArray();
        IntStream.range(0, detector.height()).parallel().forEach(row -> {
            ChargeNoise noise = new ChargeNoise(seeds[row], detector.readNoiseElectrons());
            int start = row * width;
            for (int i = start; i < start + width; i++) {
                electrons[i] = (float) noise.drawn(electrons[i]);
            }
        });
        if (detector.bleeds()) {
            new Bleeding(detector).spill(electrons);
        }
        float fullCount = detector.fullCount();
        float perElectron = (float) (1 / detector.electronsPerCount());
        float bias = detector.biasCounts() + 0.5f;
        IntStream.range(0, detector.height()).parallel().forEach(row -> {
            int start = row * width;
            for (int i = start; i < start + width; i++) {
                float count = (float) Math.floor(electrons[i] * perElectron + bias);
                electrons[i] = Math.min(fullCount, Math.max(0, count));
            }
        });
    }

    /** The mean counts, without noise, rounding or any limit; in place. */
    void withoutNoise(float[] electrons) {
        double perCount = detector.electronsPerCount();
        for (int i = 0; i < electrons.length; i++) {
            electrons[i] = (float) (electrons[i] / perCount + detector.biasCounts());
        }
    }
}
