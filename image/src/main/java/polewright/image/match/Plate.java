package polewright.image.match;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;

/**
 * The mapping between pixels of a frame and directions.
 *
 * <p>Directions are unit vectors in the reference frame of the stars: ICRS for a match, ENU for an attitude. The
 * camera's axes are those of {@link polewright.sky.attitude}; in a mirrored frame u is counted from right to left.
 */
public final class Plate {
    private static final int INVERSION_STEPS = 30;
    private static final double INVERSION_PIXELS = 1e-6;

    private final int width;
    private final int height;
    private final boolean mirrored;
    private final Vector3D right;
    private final Vector3D down;
    private final Vector3D forward;
    private final double pixelsPerRadian;
    private final Distortion distortion;

    /**
     * @param width columns of the frame
     * @param height rows
     * @param mirrored whether u runs against the columns
     * @param right direction of the camera's x axis
     * @param down direction of its y axis
     * @param forward direction of its z axis
     * @param pixelsPerRadian at the centre of the frame
     * @param distortion see there
     */
    Plate(
            int width,
            int height,
            boolean mirrored,
            Vector3D right,
            Vector3D down,
            Vector3D forward,
            double pixelsPerRadian,
            Distortion distortion) {
        this.width = width;
        this.height = height;
        this.mirrored = mirrored;
        this.right = right;
        this.down = down;
        this.forward = forward;
        this.pixelsPerRadian = pixelsPerRadian;
        this.distortion = distortion;
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    public boolean mirrored() {
        return mirrored;
    }

    public Distortion distortion() {
        return distortion;
    }

    /** At the centre of the frame. */
    public double pixelsPerRadian() {
        return pixelsPerRadian;
    }

    /** Half the diagonal of the frame, pixels. */
    public double halfDiagonal() {
        return Math.hypot(width, height) / 2;
    }

    /** Half the diagonal of the frame on the sky. */
    public Angle radius() {
        return new Angle(Math.atan(halfDiagonal() / pixelsPerRadian));
    }

    /** Pixel scale at the centre. */
    public Angle scale() {
        return new Angle(1 / pixelsPerRadian);
    }

    /** Direction of the centre of the frame. */
    public Vector3D centre() {
        return forward;
    }

    /** Right ascension of the centre where directions are ICRS; an azimuth-like angle from x toward y otherwise. */
    public Angle rightAscension() {
        return new Angle(Math.atan2(forward.getY(), forward.getX())).wrappedPositive();
    }

    public Angle declination() {
        return new Angle(Math.atan2(forward.getZ(), Math.hypot(forward.getX(), forward.getY())));
    }

    /**
     * Position angle of the picture's upward direction (against the rows) at its centre, from the pole of the third
     * axis (north) through increasing right ascension (east), [0°, 360°).
     */
    public Angle roll() {
        double ra = rightAscension().radians();
        double dec = declination().radians();
        Vector3D east = new Vector3D(-Math.sin(ra), Math.cos(ra), 0);
        Vector3D north = new Vector3D(-Math.sin(dec) * Math.cos(ra), -Math.sin(dec) * Math.sin(ra), Math.cos(dec));
        return new Angle(Math.atan2(-down.dotProduct(east), -down.dotProduct(north))).wrappedPositive();
    }

    /** The rotation from camera axes to the frame of directions, to be applied to vectors. */
    public Rotation cameraToSky() {
        return new Rotation(Vector3D.PLUS_I, Vector3D.PLUS_K, right, forward);
    }

    /** The direction of a pixel. */
    public Vector3D toSky(double x, double y) {
        double u = u(x);
        double v = v(y);
        double h = halfDiagonal();
        double idealU = u + distortion.ofU(u, v, h);
        double idealV = v + distortion.ofV(u, v, h);
        return new Vector3D(idealU, right, idealV, down, pixelsPerRadian, forward).normalize();
    }

    /** Column and row of a direction; empty if it is behind the camera or far off the frame. */
    public Optional<PixelPlace> toPixel(Vector3D direction) {
        double z = direction.dotProduct(forward);
        // More than 80° from the centre a pinhole model is useless.
        if (z < 0.17 * direction.getNorm()) {
            return Optional.empty();
        }
        double idealU = pixelsPerRadian * direction.dotProduct(right) / z;
        double idealV = pixelsPerRadian * direction.dotProduct(down) / z;
        double h = halfDiagonal();
        if (Math.hypot(idealU, idealV) > 3 * h) {
            return Optional.empty();
        }
        double u = idealU;
        double v = idealV;
        for (int step = 0; step < INVERSION_STEPS; step++) {
            double nextU = idealU - distortion.ofU(u, v, h);
            double nextV = idealV - distortion.ofV(u, v, h);
            double moved = Math.hypot(nextU - u, nextV - v);
            u = nextU;
            v = nextV;
            if (moved < INVERSION_PIXELS) {
                return Optional.of(new PixelPlace((mirrored ? -u : u) + (width - 1) / 2.0, v + (height - 1) / 2.0));
            }
        }
        return Optional.empty();
    }

    /** The pixel's position from the centre along the camera's x axis. */
    double u(double x) {
        double u = x - (width - 1) / 2.0;
        return mirrored ? -u : u;
    }

    /** The same along y. */
    double v(double y) {
        return y - (height - 1) / 2.0;
    }

    /** Direction of the camera's x axis. */
    public Vector3D right() {
        return right;
    }

    /** Direction of the camera's y axis. */
    public Vector3D down() {
        return down;
    }
}
