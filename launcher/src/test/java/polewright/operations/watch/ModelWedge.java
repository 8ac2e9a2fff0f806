package polewright.operations.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;

/**
 * A wedge model that shares no code with the program under test: a fork carried by two rotations, about a tilted pivot
 * and about a hinge on it, with a camera fixed to the tube. Axes east, north, up.
 */
public final class ModelWedge {
    private static final RotationCovariance GOOD =
            RotationCovariance.ofSigmas(Angle.ofArcseconds(2), Angle.ofArcseconds(20));

    private final double azimuthDegPerTurn;
    private final double altitudeDegPerTurn;
    private final Vector3D pivot;
    private final Random random;
    private double azimuthDeg;
    private double altitudeDeg;
    private double azimuthLeftDeg;
    private double altitudeLeftDeg;
    private double westDeg;
    private double declinationDeg = 70;
    private Instant now;

    /**
     * Sets up the wedge.
     *
     * @param azimuthDegPerTurn azimuth change of a clockwise turn, degrees
     * @param altitudeDegPerTurn altitude change of a clockwise turn, degrees
     * @param lean tilt of the pivot to the east, degrees
     */
    public ModelWedge(
            double azimuthDeg,
            double altitudeDeg,
            double azimuthDegPerTurn,
            double altitudeDegPerTurn,
            double lean,
            Instant now,
            long seed) {
        this.azimuthDeg = azimuthDeg;
        this.altitudeDeg = altitudeDeg;
        this.azimuthDegPerTurn = azimuthDegPerTurn;
        this.altitudeDegPerTurn = altitudeDegPerTurn;
        this.pivot = new Vector3D(Math.sin(Math.toRadians(lean)), 0, Math.cos(Math.toRadians(lean)));
        this.now = now;
        this.random = new Random(seed);
    }

    /** Direction of the axis: east, north, up. */
    public Vector3D axis() {
        return wedge().applyTo(Vector3D.PLUS_J);
    }

    /** Turns both screws clockwise with the accuracy of a hand, and with a fifth of a turn of backlash on reversal. */
    public void turn(double azimuthTurns, double altitudeTurns) {
        azimuthDeg += azimuthDegPerTurn * effectOf(azimuthTurns, azimuthLeftDeg);
        altitudeDeg += altitudeDegPerTurn * effectOf(altitudeTurns, altitudeLeftDeg);
        azimuthLeftDeg = azimuthTurns == 0 ? azimuthLeftDeg : azimuthTurns;
        altitudeLeftDeg = altitudeTurns == 0 ? altitudeLeftDeg : altitudeTurns;
    }

    private double effectOf(double turns, double last) {
        if (turns == 0) {
            return 0;
        }
        double hand = turns + 0.05 * random.nextGaussian();
        double lost = last * turns < 0 ? Math.min(Math.abs(hand), 0.1) : 0;
        return hand - Math.copySign(lost, hand);
    }

    /** Moves the axis without its screws, as clamps and hands do. */
    public void shift(double azimuth, double altitude) {
        azimuthDeg += azimuth;
        altitudeDeg += altitude;
    }

    /** Swings right ascension. */
    public void swing(double degreesWest) {
        westDeg += degreesWest;
    }

    /** Moves declination. */
    public void slew(double degrees) {
        declinationDeg += degrees;
    }

    public void advance(Duration time) {
        now = now.plus(time);
    }

    /** Camera attitude with the drive off: maps vectors in camera axes to east, north, up. */
    public Rotation cameraToEnu() {
        double boresight = Math.toRadians(90 - declinationDeg);
        Vector3D up = new Vector3D(0, Math.sin(boresight), -Math.cos(boresight));
        Vector3D look = new Vector3D(0, Math.cos(boresight), Math.sin(boresight));
        Rotation onTube = new Rotation(Vector3D.PLUS_K, Vector3D.PLUS_I, look, up.crossProduct(look));
        Rotation fork = new Rotation(Vector3D.PLUS_J, -Math.toRadians(westDeg), RotationConvention.VECTOR_OPERATOR);
        return wedge().applyTo(fork).applyTo(onTube);
    }

    /** The attitude seen now, to a few arcseconds. */
    public CameraAttitude frame() {
        Vector3D error = new Vector3D(random.nextGaussian(), random.nextGaussian(), 10 * random.nextGaussian());
        double size = error.getNorm() * 2 / 206265;
        Rotation noise = new Rotation(error, size, RotationConvention.VECTOR_OPERATOR);
        return CameraAttitude.of(now, cameraToEnu().applyTo(noise), GOOD);
    }

    /** Two frames with right ascension turned between them. */
    public List<CameraAttitude> turnedFrames() {
        List<CameraAttitude> frames = new ArrayList<>();
        frames.add(frame());
        advance(Duration.ofSeconds(60));
        swing(50);
        frames.add(frame());
        return frames;
    }

    /**
     * Rotates north to the direction of the axis: up about the hinge, then about the pivot, which carries the hinge.
     */
    private Rotation wedge() {
        Rotation level = new Rotation(Vector3D.PLUS_K, pivot);
        Rotation raised =
                new Rotation(Vector3D.PLUS_I, Math.toRadians(altitudeDeg), RotationConvention.VECTOR_OPERATOR);
        Rotation round = new Rotation(Vector3D.PLUS_K, -Math.toRadians(azimuthDeg), RotationConvention.VECTOR_OPERATOR);
        return level.applyTo(round).applyTo(raised);
    }
}
