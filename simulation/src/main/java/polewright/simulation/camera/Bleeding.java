package polewright.simulation.camera;

/** Blooming: charge beyond a pixel's full well runs along the column, half up and half down, until it finds room. */
final class Bleeding {
    private final Detector detector;

    Bleeding(Detector detector) {
        this.detector = detector;
    }

    void spill(float[] electrons) {
        int width = detector.width();
        int height = detector.height();
        float full = (float) detector.fullWellElectrons();
        for (int column = 0; column < width; column++) {
            // Downward and upward in turn: what runs off either end of the column is lost.
            double[] spilt = new double[height];
            boolean any = false;
            for (int row = 0; row < height; row++) {
                int i = row * width + column;
                if (electrons[i] > full) {
                    spilt[row] = electrons[i] - full;
                    electrons[i] = full;
                    any = true;
                }
            }
            if (any) {
                run(electrons, column, spilt, 0, height, 1);
                run(electrons, column, spilt, height - 1, -1, -1);
            }
        }
    }

    private void run(float[] electrons, int column, double[] spilt, int from, int to, int step) {
        float full = (float) detector.fullWellElectrons();
        double carried = 0;
        for (int row = from; row != to; row += step) {
            int i = row * detector.width() + column;
            double taken = Math.min(carried, full - electrons[i]);
            electrons[i] += (float) taken;
            carried += spilt[row] / 2 - taken;
        }
    }
}
