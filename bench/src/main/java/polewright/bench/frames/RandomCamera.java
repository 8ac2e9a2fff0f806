package polewright.bench.frames;

import java.util.random.RandomGenerator;
import polewright.simulation.camera.AmpGlow;
import polewright.simulation.camera.CameraOptics;
import polewright.simulation.camera.Detector;
import polewright.simulation.camera.Distortion;
import polewright.simulation.camera.PixelFaults;
import polewright.simulation.camera.SimulatedCamera;
import polewright.sky.angle.Angle;

/**
 * A plausible camera with a field of a given width. Its values are common practice: the sizes of the usual small
 * detectors, lenses of short focal length faster than telescopes, more distortion the wider they are.
 *
 * @param camera with its optics
 * @param fwhmPixels intended width of a star's image, 1.8 to 4 pixels
 * @param seeing the contribution of the air to it
 */
record RandomCamera(SimulatedCamera camera, double fwhmPixels, Angle seeing) {
    private static final double[][] COLUMNS_ROWS_MICRONS = {
        {1280, 960, 3.75},
        {1304, 976, 3.75},
        {1600, 1200, 4.5},
        {1920, 1080, 2.9},
        {1936, 1096, 2.9},
        {1936, 1216, 5.86}
    };
    private static final double LENS_UP_TO_MM = 120;
    private static final double LARGEST_APERTURE_MM = 250;
    private static final double WIDEST_DEG = 40;
    private static final double MOST_RADIAL = 0.03;
    private static final double MOST_TANGENTIAL = 0.001;
    private static final double WIDEST_SHARE_OF_SEEING = 0.8;

    static RandomCamera ofWidth(Angle width, RandomGenerator random) {
        double[] size = COLUMNS_ROWS_MICRONS[random.nextInt(COLUMNS_ROWS_MICRONS.length)];
        double micronsWide = size[0] * size[2];
        double focalMm = micronsWide / 1000 / (2 * Math.tan(width.radians() / 2));
        double focalRatio = focalMm < LENS_UP_TO_MM ? Draw.between(1.8, 4, random) : Draw.between(4, 8, random);
        double scaleArcsec = Math.toDegrees(Math.atan(size[2] / 1000 / focalMm)) * 3600;
        double fwhm = Draw.between(1.8, 4, random);
        double seeingArcsec = Math.min(Draw.between(1.5, 4, random), WIDEST_SHARE_OF_SEEING * fwhm * scaleArcsec);
        double blurPixels = Math.sqrt(fwhm * fwhm - Math.pow(seeingArcsec / scaleArcsec, 2));
        double share = width.degrees() / WIDEST_DEG;
        Distortion distortion = new Distortion(
                MOST_RADIAL * share * Draw.between(-1, 1, random),
                MOST_TANGENTIAL * share * Draw.between(-1, 1, random),
                MOST_TANGENTIAL * share * Draw.between(-1, 1, random));
        CameraOptics optics = new CameraOptics(
                focalMm,
                Math.min(LARGEST_APERTURE_MM, focalMm / focalRatio),
                blurPixels * size[2],
                Draw.between(0, 0.15, random),
                Draw.between(0, 0.4, random),
                distortion,
                random.nextBoolean());
        Detector detector = new Detector(
                (int) size[0],
                (int) size[1],
                size[2],
                Draw.between(0.3, 1.5, random),
                Draw.logBetween(1.5, 8, random),
                Draw.logBetween(10_000, 50_000, random),
                12 + 2 * random.nextInt(3),
                200 + random.nextInt(300),
                Draw.logBetween(0.005, 0.5, random),
                random.nextInt(10) == 0,
                random.nextInt(3) == 0
                        ? new AmpGlow(Draw.logBetween(1, 20, random), Draw.between(60, 200, random))
                        : AmpGlow.NONE,
                new PixelFaults(
                        random.nextLong(),
                        Draw.logBetween(1e-5, 6e-5, random),
                        Draw.logBetween(5, 60, random),
                        Draw.logBetween(1e-6, 1e-5, random)),
                1);
        return new RandomCamera(SimulatedCamera.of("Any", optics, detector), fwhm, Angle.ofArcseconds(seeingArcsec));
    }

    /** Background of empty sky in a pixel, electrons per second. */
    double skyElectronsPerSecond(double magnitudePerArcsec2) {
        double scaleArcsec = camera.scalePerPixel().arcseconds();
        return camera.electronsPerSecond(magnitudePerArcsec2) * scaleArcsec * scaleArcsec;
    }
}
