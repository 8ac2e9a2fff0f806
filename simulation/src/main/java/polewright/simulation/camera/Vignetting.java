package polewright.simulation.camera;

import org.jspecify.annotations.Nullable;

/** Vignetting of stars and sky at each place of the picture, and the background there. */
final class Vignetting {
    private final double cornerShade;
    private final double centreX;
    private final double centreY;
    private final double perPixel;
    private final double gradientX;
    private final double gradientY;
    private final @Nullable CloudBank clouds;

    Vignetting(SimulatedCamera camera, SkyConditions sky) {
        Projection projection = new Projection(camera);
        cornerShade = camera.optics().cornerShade();
        centreX = projection.centreX();
        centreY = projection.centreY();
        perPixel = 1 / projection.cornerPixels();
        gradientX = sky.gradient() * Math.cos(sky.gradientDirectionRad());
        gradientY = sky.gradient() * Math.sin(sky.gradientDirectionRad());
        clouds = sky.clouds().orElse(null);
    }

    /** Share of starlight that reaches the detector at a place. */
    double ofStars(double x, double y) {
        double u = (x - centreX) * perPixel;
        double v = (y - centreY) * perPixel;
        double optics = 1 - cornerShade * (u * u + v * v);
        return clouds == null ? optics : optics * transmission(clouds, clouds.thickness(u, v));
    }

    /**
     * Dims the starlight of a row, and adds the sky background and what vignetting does not dim: dark current and the
     * detector's own glow.
     *
     * @param electrons starlight on entry, total charge on return; row by row
     * @param clearSky background of clear sky in a pixel at the centre
     * @param dark dark charge of each pixel of the row
     * @param glow of the detector itself at the row's bright end
     * @param alongRow decrease of the glow along the row, from 0 to 1
     */
    void addSky(float[] electrons, int row, int width, double clearSky, double dark, double glow, double[] alongRow) {
        double v = (row - centreY) * perPixel;
        double skyAtRow = clearSky * (1 + gradientY * v);
        double skyAlongRow = clearSky * gradientX;
        double shadeAtRow = 1 - cornerShade * v * v;
        int start = row * width;
        for (int column = 0; column < width; column++) {
            double u = (column - centreX) * perPixel;
            double stars = electrons[start + column];
            double background = skyAtRow + skyAlongRow * u;
            if (clouds != null) {
                double thickness = clouds.thickness(u, v);
                stars *= transmission(clouds, thickness);
                background *= 1 + thickness * clouds.glow();
            }
            electrons[start + column] = (float)
                    ((stars + background) * (shadeAtRow - cornerShade * u * u) + dark + glow * alongRow[column]);
        }
    }

    private static double transmission(CloudBank clouds, double thickness) {
        return 1 - thickness * (1 - clouds.transmission());
    }
}
