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
 * What may have happened where frames do not close on one axis, how likely each is, and an axis whose region holds all the
 * places that are still possible.
 *
 * <p>Each disturbance of {@link FrameDisturbance} is tried at each frame, and weighed by its evidence and by how often it
 * happens. Those under a three-hundredth of the likeliest are ruled out. The axis is the mean of the others, or of those in
 * which the mount merely gives where they are likelier than all mishaps; its
 * covariance is theirs together, and wider where need be, so that each place of the likeliest 99 % lies inside the 95 %
 * region.
 */
public final class FrameExplanations {
    private static final double RULED_OUT = 1 / 300.0;
    private static final double HELD_INSIDE = 0.99;
    // 95 % of chi-squared with 2 degrees of freedom.
    private static final double REGION_95 = -2 * Math.log(0.05);
    // Of a place that is itself uncertain, so many sigmas to each side are to lie inside.
    private static final double SIGMAS_INSIDE = 1.5;

    /**
     * One of them.
     *
     * @param what happened
     * @param probability of it, among all
     * @param axis where it puts the axis, after the last frame
     * @param size how large it was
     */
    public record Explanation(FrameDisturbance what, double probability, AxisPointing axis, Angle size) {}

    /**
     * Which frames do not go together, whatever happened to them.
     *
     * @param frame counted from 1
     * @param alone whether this one alone does not go with the others; else those before it do not go with it and those
     *     after
     */
    public record Suspect(int frame, boolean alone) {}

    /** The axis and its place in the picture, with the covariance of both as in {@link AxisFit}. */
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
     * Weighs them.
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

    /** What may have happened, the likeliest first. */
    public List<Explanation> explanations() {
        return explanations;
    }

    /**
     * Which frames do not go together, where that is as likely as is asked for, given that more happened than that the
     * mount gives a little. A knock during an exposure falls between what the frames to either side show, so that it counts
     * for either.
     */
    public Optional<Suspect> suspect(double atLeast) {
        double disturbed = 1 - onlyGives();
        return explanations.stream()
                .flatMap(e -> suspects(e.what()).stream())
                .distinct()
                .filter(suspect -> causes(suspect).stream()
                                .mapToDouble(Explanation::probability)
                                .sum()
                        >= atLeast * disturbed)
                .findFirst();
    }

    /** What may have happened there, the likeliest first. */
    public List<Explanation> causes(Suspect suspect) {
        return explanations.stream()
                .filter(e -> suspects(e.what()).contains(suspect))
                .toList();
    }

    /** Those by which a disturbance would be named, the plainest first; none for one that concerns all frames. */
    private List<Suspect> suspects(FrameDisturbance what) {
        int frame = what.frame();
        Suspect before = new Suspect(frame, false);
        Suspect after = new Suspect(frame + 1, false);
        if (what.concernsAll()) {
            return List.of();
        } else if (what.kind().isBetweenFrames() || frame == frameCount) {
            return List.of(before);
        } else if (frame == 1) {
            // A first frame that is astray cannot be told from a slip after it.
            return List.of(after);
        }
        Suspect alone = new Suspect(frame, true);
        return what.kind() == FrameDisturbance.Kind.BUMPED_WHILE_EXPOSED
                ? List.of(alone, before, after)
                : List.of(alone);
    }

    /** How likely it is that nothing happened but that the mount gives a little. */
    public double onlyGives() {
        return explanations.stream()
                .filter(e -> e.what().concernsAll())
                .mapToDouble(Explanation::probability)
                .sum();
    }

    Mixture mixture() {
        return mixture;
    }

    /** Drops the disturbances that are ruled out and rescales the rest to add up to one. */
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

    /** Those whose mean is the axis: where most likely nothing happened, mishaps widen the region and leave the axis. */
    private static List<Weighed> middle(List<Weighed> possible) {
        List<Weighed> ofAllFrames =
                possible.stream().filter(w -> w.model().what().concernsAll()).toList();
        double together = ofAllFrames.stream().mapToDouble(Weighed::probability).sum();
        return together > 0.5 ? ofAllFrames : possible;
    }

    /** By how much the variances of two figures have to grow so that the likeliest places lie inside the 95 % region. */
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

    /** One fit, seen from the mean of all: shifts (right, up, toward, across) in arcsec. */
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

        /** The squared distance, in units of a covariance, of the farthest of the ends of its own axes. */
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
