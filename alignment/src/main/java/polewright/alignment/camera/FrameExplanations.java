package polewright.alignment.camera;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.mount.AxisPointing;
import polewright.mount.Tangents;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.Site;

/**
 * The possible explanations of frames that do not close on one axis, their probabilities, and an axis whose region
 * covers all positions that remain possible.
 *
 * <p>Each disturbance of {@link FrameDisturbance} is tried at each frame and weighted by its evidence and its prior
 * probability. Those less likely than a three-hundredth of the likeliest are ruled out. The axis is the mean of the
 * others, or only of those with ordinary flexure if they are likelier than all mishaps together. Its covariance is
 * theirs combined, widened if necessary until each position of the likeliest 99 % lies inside the 95 % region.
 */
public final class FrameExplanations {
    private static final double RULED_OUT = 1 / 300.0;
    private static final double HELD_INSIDE = 0.99;
    // 95 % of chi-squared with 2 degrees of freedom.
    private static final double REGION_95 = -2 * Math.log(0.05);
    // Of a position that is itself uncertain, this many sigmas to each side should lie inside.
    private static final double SIGMAS_INSIDE = 1.5;

    /**
     * One explanation.
     *
     * @param what the disturbance
     * @param probability among all explanations
     * @param axis the axis it implies, after the last frame
     * @param size size of the disturbance
     */
    public record Explanation(FrameDisturbance what, double probability, AxisPointing axis, Angle size) {}

    /**
     * The frames that are inconsistent, whatever the cause.
     *
     * @param frame counted from 1
     * @param alone whether this one alone is inconsistent with the others; otherwise the frames before it are
     *     inconsistent with it and those after
     */
    public record Suspect(int frame, boolean alone) {}

    /** The axis and its direction in camera axes, with their joint covariance as in {@link AxisFit}. */
    record Mixture(Vector3D axis, Vector3D inCamera, RealMatrix covariance) {}

    private record Weighed(DisturbanceModel model, DisturbedFit fit, double probability) {}

    private final int frameCount;
    private final List<Explanation> explanations;
    private final Mixture mixture;

    private FrameExplanations(int frameCount, List<Explanation> explanations, Mixture mixture) {
        this.frameCount = frameCount;
        this.explanations = explanations;
        this.mixture = mixture;
    }

    /**
     * Computes the probabilities.
     *
     * @param frames three at least, in order of exposure
     */
    static FrameExplanations of(Site site, List<CameraAttitude> frames, AxisFit undisturbed) {
        Vector3D northPole = AxisPointing.atPole(site).northernEnd(site);
        List<DisturbanceModel> models = DisturbanceModel.all(frames.size(), northPole);
        List<List<DisturbedFit>> fits = new ArrayList<>();
        List<Double> logChances = new ArrayList<>();
        double highest = Double.NEGATIVE_INFINITY;
        for (DisturbanceModel model : models) {
            long alike = models.stream()
                    .filter(other -> other.what().kind() == model.what().kind())
                    .count();
            double logChance = Math.log(model.what().kind().chance() / alike);
            List<DisturbedFit> sizes = DisturbedFit.of(frames, model, undisturbed.axis(), undisturbed.inCamera());
            fits.add(sizes);
            logChances.add(logChance);
            for (DisturbedFit fit : sizes) {
                highest = Math.max(highest, logChance + fit.logEvidence());
            }
        }
        List<Weighed> weighed = new ArrayList<>();
        for (int i = 0; i < models.size(); i++) {
            for (DisturbedFit fit : fits.get(i)) {
                weighed.add(new Weighed(models.get(i), fit, Math.exp(logChances.get(i) + fit.logEvidence() - highest)));
            }
        }
        List<Weighed> possible = possible(weighed);
        return new FrameExplanations(frames.size(), explanations(possible), mixture(possible));
    }

    /** The possible explanations, the likeliest first. */
    public List<Explanation> explanations() {
        return explanations;
    }

    /**
     * The inconsistent frames, if their probability is at least the one given, on condition that more happened than
     * ordinary flexure. A knock during an exposure falls between what the frames on either side show, so it counts for
     * either.
     */
    public Optional<Suspect> suspect(double atLeast) {
        double disturbed = 1 - probabilityOfFlexureOnly();
        return explanations.stream()
                .flatMap(e -> suspects(e.what()).stream())
                .distinct()
                .filter(suspect -> causes(suspect).stream()
                                .mapToDouble(Explanation::probability)
                                .sum()
                        >= atLeast * disturbed)
                .findFirst();
    }

    /** The possible causes there, the likeliest first. */
    public List<Explanation> causes(Suspect suspect) {
        return explanations.stream()
                .filter(e -> suspects(e.what()).contains(suspect))
                .toList();
    }

    /** The suspects that a disturbance implies, the simplest first; none for one that affects all frames. */
    private List<Suspect> suspects(FrameDisturbance what) {
        int frame = what.frame();
        Suspect before = new Suspect(frame, false);
        Suspect after = new Suspect(frame + 1, false);
        if (what.affectsAllFrames()) {
            return List.of();
        } else if (what.kind().isBetweenFrames() || frame == frameCount) {
            return List.of(before);
        } else if (frame == 1) {
            // A wrong first frame is indistinguishable from a slip after it.
            return List.of(after);
        }
        Suspect alone = new Suspect(frame, true);
        return what.kind() == FrameDisturbance.Kind.BUMPED_WHILE_EXPOSED
                ? List.of(alone, before, after)
                : List.of(alone);
    }

    /** The probability that there was only ordinary flexure. */
    public double probabilityOfFlexureOnly() {
        return explanations.stream()
                .filter(e -> e.what().affectsAllFrames())
                .mapToDouble(Explanation::probability)
                .sum();
    }

    Mixture mixture() {
        return mixture;
    }

    /** Drops the disturbances that are ruled out and renormalises the rest. */
    private static List<Weighed> possible(List<Weighed> all) {
        List<FrameDisturbance> kinds =
                all.stream().map(w -> w.model().what()).distinct().toList();
        double likeliest = kinds.stream().mapToDouble(k -> sum(all, k)).max().orElse(1);
        List<Weighed> kept = all.stream()
                .filter(w -> sum(all, w.model().what()) >= RULED_OUT * likeliest)
                .toList();
        double total = kept.stream().mapToDouble(Weighed::probability).sum();
        return kept.stream()
                .map(w -> new Weighed(w.model(), w.fit(), w.probability() / total))
                .toList();
    }

    private static double sum(List<Weighed> all, FrameDisturbance what) {
        return all.stream()
                .filter(w -> w.model().what().equals(what))
                .mapToDouble(Weighed::probability)
                .sum();
    }

    private static List<Explanation> explanations(List<Weighed> possible) {
        List<Explanation> explanations = new ArrayList<>();
        for (FrameDisturbance what :
                possible.stream().map(w -> w.model().what()).distinct().toList()) {
            List<Weighed> sizes =
                    possible.stream().filter(w -> w.model().what().equals(what)).toList();
            Weighed best = sizes.stream()
                    .max(Comparator.comparingDouble(Weighed::probability))
                    .orElseThrow();
            explanations.add(new Explanation(
                    what,
                    sum(possible, what),
                    new AxisPointing(best.fit().axis()),
                    Angle.ofArcseconds(best.fit().size())));
        }
        explanations.sort(Comparator.comparingDouble(Explanation::probability).reversed());
        return List.copyOf(explanations);
    }

    private static Mixture mixture(List<Weighed> possible) {
        Vector3D axis = Vector3D.ZERO;
        Vector3D inCamera = Vector3D.ZERO;
        for (Weighed w : middle(possible)) {
            axis = axis.add(w.probability(), w.fit().axis());
            inCamera = inCamera.add(w.probability(), w.fit().inCamera());
        }
        axis = axis.normalize();
        inCamera = inCamera.normalize();
        Tangents atAxis = Tangents.rightAndUp(axis);
        Tangents atCamera = Tangents.towardBoresightAndAcross(inCamera);
        List<Place> places = new ArrayList<>();
        RealMatrix covariance = MatrixUtils.createRealMatrix(4, 4);
        for (Weighed w : possible) {
            Place place = Place.of(w, axis, inCamera, atAxis, atCamera);
            places.add(place);
            covariance = covariance.add(place.secondMoment().scalarMultiply(w.probability()));
        }
        double forAxis = Math.sqrt(widening(places, covariance, 0));
        double forCamera = Math.sqrt(widening(places, covariance, 2));
        RealMatrix wider = MatrixUtils.createRealDiagonalMatrix(new double[] {forAxis, forAxis, forCamera, forCamera});
        return new Mixture(axis, inCamera, wider.multiply(covariance).multiply(wider));
    }

    /**
     * Those whose mean is the axis: if most likely nothing happened, mishaps widen the region but do not move the axis.
     */
    private static List<Weighed> middle(List<Weighed> possible) {
        List<Weighed> ofAllFrames = possible.stream()
                .filter(w -> w.model().what().affectsAllFrames())
                .toList();
        double together = ofAllFrames.stream().mapToDouble(Weighed::probability).sum();
        return together > 0.5 ? ofAllFrames : possible;
    }

    /** The factor for two parameters' covariance that makes the 95 % region cover the likeliest positions. */
    private static double widening(List<Place> places, RealMatrix covariance, int from) {
        RealMatrix both = covariance.getSubMatrix(from, from + 1, from, from + 1);
        List<Place> likeliestFirst = new ArrayList<>(places);
        likeliestFirst.sort(Comparator.comparingDouble(Place::probability).reversed());
        double widest = 1;
        double held = 0;
        for (Place place : likeliestFirst) {
            if (held >= HELD_INSIDE) {
                break;
            }
            held += place.probability();
            widest = Math.max(widest, place.farthestSquare(both, from) / REGION_95);
        }
        return widest;
    }

    /** One fit relative to the mean of all: shifts (right, up, toward, across) in arcsec. */
    private record Place(RealVector shift, RealMatrix covariance, double probability) {
        private static final double ARCSEC = Math.PI / (180 * 3600);

        static Place of(Weighed w, Vector3D axis, Vector3D inCamera, Tangents atAxis, Tangents atCamera) {
            Vector3D axisShift = w.fit().axis().subtract(axis).scalarMultiply(1 / ARCSEC);
            Vector3D cameraShift = w.fit().inCamera().subtract(inCamera).scalarMultiply(1 / ARCSEC);
            RealVector shift = MatrixUtils.createRealVector(new double[] {
                axisShift.dotProduct(atAxis.first()),
                axisShift.dotProduct(atAxis.second()),
                cameraShift.dotProduct(atCamera.first()),
                cameraShift.dotProduct(atCamera.second())
            });
            RealMatrix turn = MatrixUtils.createRealMatrix(4, 4);
            turn.setSubMatrix(turned(Tangents.rightAndUp(w.fit().axis()), atAxis), 0, 0);
            turn.setSubMatrix(turned(Tangents.towardBoresightAndAcross(w.fit().inCamera()), atCamera), 2, 2);
            RealMatrix turned = turn.multiply(w.fit().covariance()).multiply(turn.transpose());
            return new Place(shift, turned.add(turned.transpose()).scalarMultiply(0.5), w.probability());
        }

        private static double[][] turned(Tangents from, Tangents to) {
            return new double[][] {
                {to.first().dotProduct(from.first()), to.first().dotProduct(from.second())},
                {to.second().dotProduct(from.first()), to.second().dotProduct(from.second())}
            };
        }

        RealMatrix secondMoment() {
            return covariance.add(shift.outerProduct(shift));
        }

        /** Squared Mahalanobis distance of the farthest end of its own principal axes. */
        double farthestSquare(RealMatrix both, int from) {
            RealMatrix inverse = MatrixUtils.inverse(both);
            EigenDecompositionSymmetric own =
                    new EigenDecompositionSymmetric(covariance.getSubMatrix(from, from + 1, from, from + 1));
            double farthest = 0;
            for (int k = 0; k < 2; k++) {
                double sigma = SIGMAS_INSIDE * Math.sqrt(Math.max(0, own.getEigenvalue(k)));
                double alongFirst = own.getEigenvector(k).getEntry(0) * sigma;
                double alongSecond = own.getEigenvector(k).getEntry(1) * sigma;
                for (int side = -1; side <= 1; side += 2) {
                    double first = shift.getEntry(from) + side * alongFirst;
                    double second = shift.getEntry(from + 1) + side * alongSecond;
                    farthest = Math.max(
                            farthest,
                            first * first * inverse.getEntry(0, 0)
                                    + 2 * first * second * inverse.getEntry(0, 1)
                                    + second * second * inverse.getEntry(1, 1));
                }
            }
            return farthest;
        }
    }
}
