package polewright.image.match;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** The plate determined by four paired stars, if they agree on one. */
final class PatternPlate {
    // Of the pattern's size: lenses distort, and more at a picture's edge than in its middle.
    private static final double ALLOWED_SHARE = 0.02;
    private static final double ALLOWED_PIXELS = 2;

    private static final int STEPS = 3;

    private PatternPlate() {}

    /** Empty if the scale is out of range or the four do not fit. */
    static Optional<Plate> of(
            Hypothesis guess, Detections detections, MappedStars stars, boolean mirrored, ScaleRange scale) {
        int width = detections.width();
        int height = detections.height();
        double cx = (width - 1) / 2.0;
        double cy = (height - 1) / 2.0;
        double sign = mirrored ? -1 : 1;
        double[] u = new double[Hypothesis.STARS];
        double[] v = new double[Hypothesis.STARS];
        Vector3D[] sky = new Vector3D[Hypothesis.STARS];
        double pixels = 0;
        double angle = 0;
        for (int i = 0; i < Hypothesis.STARS; i++) {
            u[i] = sign * (detections.x(guess.detection(i)) - cx);
            v[i] = detections.y(guess.detection(i)) - cy;
            sky[i] = stars.direction(guess.rank(i));
            if (i > 0) {
                pixels += Math.hypot(u[i] - u[0], v[i] - v[0]);
                angle += Vector3D.angle(sky[i], sky[0]);
            }
        }
        double f = pixels / angle;
        // Off the centre of a wide frame a pixel covers less sky than there: by cos² at most.
        double offCentre = Math.hypot(u[0], v[0]);
        for (int step = 0; step < 4; step++) {
            double cameraAngle = 0;
            Vector3D first = new Vector3D(u[0], v[0], f);
            for (int i = 1; i < Hypothesis.STARS; i++) {
                cameraAngle += Vector3D.angle(first, new Vector3D(u[i], v[i], f));
            }
            double ratio = cameraAngle / angle;
            f *= Math.max(0.5, Math.min(2, ratio));
            if (offCentre < 0.02 * f || Math.abs(ratio - 1) < 1e-4) {
                break;
            }
        }
        if (!scale.widened(0.03).holds(1 / f)) {
            return Optional.empty();
        }
        Vector3D camera0 = new Vector3D(u[0], v[0], f);
        Vector3D camera1 = new Vector3D(u[1], v[1], f);
        Rotation turn = new Rotation(camera0, camera1, sky[0], sky[1]);
        Plate start = new Plate(
                width,
                height,
                mirrored,
                turn.applyTo(Vector3D.PLUS_I),
                turn.applyTo(Vector3D.PLUS_J),
                turn.applyTo(Vector3D.PLUS_K),
                f,
                Distortion.NONE);
        PlateFit.Pairs pairs = new PlateFit.Pairs(
                Hypothesis.STARS,
                i -> detections.x(guess.detection(i)),
                i -> detections.y(guess.detection(i)),
                i -> 1,
                i -> sky[i]);
        double size = Math.hypot(u[1] - u[0], v[1] - v[0]);
        double allowed = ALLOWED_PIXELS + ALLOWED_SHARE * size;
        // The first two fit by construction; most wrong guesses show in the others.
        for (int i = 2; i < Hypothesis.STARS; i++) {
            double z = sky[i].dotProduct(start.centre()) / f;
            double offU = u[i] - sky[i].dotProduct(start.right()) / z;
            double offV = v[i] - sky[i].dotProduct(start.down()) / z;
            if (!(offU * offU + offV * offV < 9 * allowed * allowed)) {
                return Optional.empty();
            }
        }
        return PlateFit.of(start, pairs, PlateModel.PINHOLE, STEPS)
                .filter(fit -> fit.normalisedSquare() < Hypothesis.STARS * allowed * allowed
                        && scale.widened(0.03).holds(fit.plate().scale().radians()))
                .map(PlateFit::plate);
    }
}
