package polewright.simulation.camera;

import java.util.SplittableRandom;
import java.util.random.RandomGenerator;

/** Charge that is not from light: leakage of faulty pixels, and tracks of cosmic rays. */
final class StrayCharge {
    private static final double HOT_DECADES_SIGMA = 0.5;
    private static final double MEAN_TRACK_PIXELS = 4;
    private static final double RAY_ELECTRONS_PER_PIXEL = 600;
    private static final double DEAD_RESPONSE = 0.05;

    private final Detector detector;

    StrayCharge(Detector detector) {
        this.detector = detector;
    }

    /** Adds the leakage of the same pixels in every frame of a detector. */
    void addFaults(float[] electrons, double seconds) {
        PixelFaults faults = detector.faults();
        SplittableRandom map = new SplittableRandom(faults.seed());
        for (long n = Math.round(faults.hotFraction() * detector.pixels()); n > 0; n--) {
            int pixel = map.nextInt(detector.pixels());
            double rate = faults.hotElectronsPerSecond() * Math.pow(10, HOT_DECADES_SIGMA * map.nextGaussian());
            electrons[pixel] += (float) (rate * seconds);
        }
        for (long n = Math.round(faults.deadFraction() * detector.pixels()); n > 0; n--) {
            electrons[map.nextInt(detector.pixels())] *= (float) DEAD_RESPONSE;
        }
    }

    /** Adds short straight tracks, one pixel wide, their number drawn from the area and the time. */
    void addCosmicRays(float[] electrons, double seconds, RandomGenerator random) {
        double expected = detector.cosmicRaysPerCm2Minute() * detector.areaCm2() * seconds / 60;
        for (double waited = exponential(random); waited < expected; waited += exponential(random)) {
            track(electrons, random);
        }
    }

    private void track(float[] electrons, RandomGenerator random) {
        double x = random.nextDouble() * detector.width();
        double y = random.nextDouble() * detector.height();
        double direction = 2 * Math.PI * random.nextDouble();
        double length = 1 + MEAN_TRACK_PIXELS * exponential(random);
        double charge = RAY_ELECTRONS_PER_PIXEL * (0.5 + exponential(random));
        int steps = (int) Math.ceil(length * 4);
        for (int i = 0; i < steps; i++) {
            double along = length * i / steps;
            int column = (int) Math.floor(x + along * Math.cos(direction));
            int row = (int) Math.floor(y + along * Math.sin(direction));
            if (column >= 0 && column < detector.width() && row >= 0 && row < detector.height()) {
                electrons[row * detector.width() + column] += (float) (charge * length / steps);
            }
        }
    }

    private static double exponential(RandomGenerator random) {
        return -Math.log(1 - random.nextDouble());
    }
}
