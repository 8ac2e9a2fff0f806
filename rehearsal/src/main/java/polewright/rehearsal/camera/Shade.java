package polewright.rehearsal.camera;

/** What each place of the picture gets of the light of stars and sky, and how bright the sky is there. */
final class Shade {
    private final SkyConditions sky;
    private final double cornerShade;
    private final double centreX;
    private final double centreY;
    private final double cornerPixels;
    private final double gradientX;
    private final double gradientY;
    private final boolean clear;

    Shade(Exposure exposure) {
        Projection projection = new Projection(exposure.camera());
        sky = exposure.sky();
        cornerShade = exposure.camera().optics().cornerShade();
        centreX = projection.centreX();
        centreY = projection.centreY();
        cornerPixels = projection.cornerPixels();
        gradientX = sky.gradient() * Math.cos(sky.gradientDirectionRad());
        gradientY = sky.gradient() * Math.sin(sky.gradientDirectionRad());
        clear = sky.clouds().isEmpty();
    }

    /** Share of starlight that reaches the detector at a place. */
    double ofStars(double x, double y) {
        double u = (x - centreX) / cornerPixels;
        double v = (y - centreY) / cornerPixels;
        double optics = 1 - cornerShade * (u * u + v * v);
        return clear ? optics : optics * transmission(thickness(u, v));
    }

    /**
     * Dims the starlight of a row and adds the sky's.
     *
     * @param electrons starlight, row after row
     * @param skyElectrons what clear sky gives a pixel in the middle
     * @param glowElectrons what each pixel of this row gets besides, unshaded
     */
    void addSky(float[] electrons, int row, int width, double skyElectrons, double[] glowElectrons) {
        double v = (row - centreY) / cornerPixels;
        double atRow = 1 + gradientY * v;
        int start = row * width;
        for (int column = 0; column < width; column++) {
            double u = (column - centreX) / cornerPixels;
            double stars = electrons[start + column];
            double background = skyElectrons * (atRow + gradientX * u);
            if (!clear) {
                double thickness = thickness(u, v);
                stars *= transmission(thickness);
                background *= 1 + thickness * sky.clouds().orElseThrow().glow();
            }
            electrons[start + column] =
                    (float) ((stars + background) * (1 - cornerShade * (u * u + v * v)) + glowElectrons[column]);
        }
    }

    private double thickness(double u, double v) {
        return sky.clouds().map(bank -> bank.thickness(u, v)).orElse(0.0);
    }

    private double transmission(double thickness) {
        return sky.clouds()
                .map(bank -> 1 - thickness * (1 - bank.transmission()))
                .orElse(1.0);
    }
}
