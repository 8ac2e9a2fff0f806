package polewright.simulation.camera;

import polewright.mount.rig.Camera;
import polewright.sky.angle.Angle;

/**
 * An invented camera.
 *
 * @param name as in a frame's header
 * @param optics in front
 * @param detector behind
 * @param zeroPointElectronsPerSecond electrons per second from a star of V = 0 at the zenith of a clear, airless sky,
 *     over its whole image
 */
public record SimulatedCamera(String name, CameraOptics optics, Detector detector, double zeroPointElectronsPerSecond) {
    // V = 0 gives about 1000 photons per second, cm² and Å (common practice; 1000 by the flux of
    // 3.60994e-9 erg/s/cm²/Å in danmoser/pyhdust, refs/filters/REFS.rst, fcbe07096d95). Without a filter some 3000 Å
    // count, and half of the photons make an electron.
    private static final double ELECTRONS_PER_CM2_SECOND = 1000.0 * 3000 * 0.5;

    private static final double MICRONS_PER_MM = 1000;

    /** A camera whose zero point follows from its aperture, without a filter. */
    public static SimulatedCamera of(String name, CameraOptics optics, Detector detector) {
        double radiusCm = optics.apertureMm() / 20;
        return new SimulatedCamera(name, optics, detector, Math.PI * radiusCm * radiusCm * ELECTRONS_PER_CM2_SECOND);
    }

    /** A small camera on a guide scope: 2 megapixels of 3.1″, 1.4° by 1°. */
    public static SimulatedCamera guideCamera() {
        return of(
                "Wren 2",
                new CameraOptics(200, 50, 4.5, 0.06, 0.1, Distortion.radial(0.001), false),
                Detector.ofGuideCamera(1600, 1200, 3.0, new AmpGlow(2, 120), new PixelFaults(20_261, 4e-5, 40, 1e-5)));
    }

    /** An astronomy camera on the main tube: 24 megapixels of 0.38″, 38′ by 25′. */
    public static SimulatedCamera mainTubeCamera() {
        return of(
                "Heron 24",
                new CameraOptics(2050, 203, 9, 0.08, 0.25, Distortion.NONE, false),
                new Detector(
                        6000,
                        4000,
                        3.76,
                        0.8,
                        1.6,
                        50_000,
                        16,
                        500,
                        0.002,
                        false,
                        AmpGlow.NONE,
                        new PixelFaults(20_262, 1e-5, 2, 1e-6),
                        1));
    }

    /** A hand camera with a 50 mm lens: 24 megapixels of 16″, 26° by 18°. */
    public static SimulatedCamera wideLens() {
        return of(
                "Plover with 50 mm",
                new CameraOptics(50, 18, 7, 0.1, 0.35, new Distortion(-0.012, 2e-4, -1e-4), false),
                new Detector(
                        6000,
                        4000,
                        3.9,
                        0.7,
                        2.4,
                        9_000,
                        14,
                        1024,
                        0.05,
                        false,
                        AmpGlow.NONE,
                        new PixelFaults(20_263, 3e-5, 20, 1e-6),
                        1));
    }

    public SimulatedCamera with(CameraOptics other) {
        return new SimulatedCamera(name, other, detector, zeroPointElectronsPerSecond);
    }

    public SimulatedCamera with(Detector other) {
        return new SimulatedCamera(name, optics, other, zeroPointElectronsPerSecond);
    }

    /** The same camera as its owner would describe it in a rig. */
    public Camera inRig(String cameraName) {
        return new Camera(
                cameraName, optics.focalLengthMm(), detector.pixelMicrons(), detector.width(), detector.height());
    }

    /** Pixel scale at the centre of the picture. */
    public Angle scalePerPixel() {
        return new Angle(Math.atan(detector.pixelMicrons() / MICRONS_PER_MM / optics.focalLengthMm()));
    }

    /** Focal length over pixel width. */
    double focalLengthPixels() {
        return optics.focalLengthMm() * MICRONS_PER_MM / detector.pixelMicrons();
    }

    /** Electrons per second from a star of this magnitude. */
    public double electronsPerSecond(double magnitude) {
        return zeroPointElectronsPerSecond * Math.pow(10, -0.4 * magnitude);
    }
}
