package polewright.simulation.camera;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** From directions in camera axes to pixels and back: pinhole, then distortion, then a mirror if there is one. */
final class Projection {
    // Beyond 80° from the optical axis a pinhole projection runs off to infinity.
    private static final double LEAST_COSINE = Math.cos(Math.toRadians(80));

    private final double focalPixels;
    private final double centreX;
    private final double centreY;
    private final double cornerPixels;
    private final Distortion distortion;
    private final boolean mirrored;

    Projection(SimulatedCamera camera) {
        Detector detector = camera.detector();
        focalPixels = camera.focalLengthPixels();
        centreX = (detector.width() - 1) / 2.0;
        centreY = (detector.height() - 1) / 2.0;
        cornerPixels = Math.hypot(detector.width(), detector.height()) / 2;
        distortion = camera.optics().distortion();
        mirrored = camera.optics().mirrored();
    }

    double centreX() {
        return centreX;
    }

    double centreY() {
        return centreY;
    }

    /** Half a diagonal of the picture, pixels. */
    double cornerPixels() {
        return cornerPixels;
    }

    boolean mirrored() {
        return mirrored;
    }

    /**
     * The pixel position of a direction.
     *
     * @param x of a unit vector in camera axes, with y and z
     * @param pixel receives column and row
     * @return false when the direction is too far to the side or behind
     */
    boolean toPixel(double x, double y, double z, double[] pixel) {
        if (z < LEAST_COSINE) {
            return false;
        }
        double perUnit = focalPixels / z / cornerPixels;
        pixel[0] = x * perUnit;
        pixel[1] = y * perUnit;
        distortion.apply(pixel);
        pixel[0] = centreX + (mirrored ? -1 : 1) * pixel[0] * cornerPixels;
        pixel[1] = centreY + pixel[1] * cornerPixels;
        return true;
    }

    /** The direction of a pixel: a unit vector in camera axes. */
    Vector3D toDirection(double column, double row) {
        double[] uv = {(mirrored ? -1 : 1) * (column - centreX) / cornerPixels, (row - centreY) / cornerPixels};
        distortion.undo(uv);
        return new Vector3D(uv[0] * cornerPixels / focalPixels, uv[1] * cornerPixels / focalPixels, 1).normalize();
    }
}
