package polewright.mount.pointing;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import polewright.sky.angle.Angle;

/**
 * Terms that can change together with almost no effect on the centred stars.
 *
 * <p>Found as the major axes of the terms' joint uncertainty, with each term scaled by its uncertainty if all others
 * were known. A direction counts if it is known {@value #INFLATION} times worse than its terms would be if all others
 * were known, and if that leaves one of them unsupported or more than {@value #MANY_CENTRINGS} times as uncertain as
 * the best centring. Its terms are those that make up more than {@value #SHARE} of it.
 *
 * @param together relative changes, scaled so that the largest is 1: the combination that is not known
 * @param sigma 1 sigma of that change, as an angle of the term that changes most
 * @param known the best known combination of the same terms, with largest weight 1
 * @param knownSigma 1 sigma of the weighted sum
 */
public record InseparableTerms(
        Map<PointingTerm, Double> together, Angle sigma, Map<PointingTerm, Double> known, Angle knownSigma) {
    private static final double INFLATION = 4;
    private static final double SHARE = 0.05;
    private static final double MANY_CENTRINGS = 10;

    public InseparableTerms {
        together = Map.copyOf(together);
        known = Map.copyOf(known);
    }

    /** In the order of {@link PointingTerm}. */
    public List<PointingTerm> terms() {
        return together.keySet().stream().sorted().toList();
    }

    static List<InseparableTerms> of(PointingModel model) {
        List<PointingTerm> terms =
                model.termEstimates().stream().map(TermEstimate::term).toList();
        RealMatrix joint = among(model.covariance(), terms);
        // Each term in units of its uncertainty if all others were known: no unit or usual size matters.
        double[] alone = alone(joint);
        RealMatrix scale = MatrixUtils.createRealDiagonalMatrix(alone);
        RealMatrix inverse = MatrixUtils.inverse(scale);
        EigenDecompositionSymmetric axes = new EigenDecompositionSymmetric(
                symmetric(inverse.multiply(joint).multiply(inverse)));
        List<InseparableTerms> found = new ArrayList<>();
        for (int i = 0; i < terms.size(); i++) {
            RealVector way = axes.getEigenvector(i);
            List<PointingTerm> moved = new ArrayList<>();
            for (int j = 0; j < terms.size(); j++) {
                if (way.getEntry(j) * way.getEntry(j) > SHARE) {
                    moved.add(terms.get(j));
                }
            }
            if (moved.size() > 1 && axes.getEigenvalue(i) > INFLATION * INFLATION) {
                RealVector change = scale.operate(way);
                InseparableTerms group = of(model, terms, moved, change, Math.sqrt(axes.getEigenvalue(i)));
                if (group.isOpen(model)) {
                    found.add(group);
                }
            }
        }
        return found;
    }

    private static double[] alone(RealMatrix joint) {
        RealMatrix information = MatrixUtils.inverse(joint);
        double[] alone = new double[joint.getRowDimension()];
        for (int i = 0; i < alone.length; i++) {
            alone[i] = 1 / Math.sqrt(information.getEntry(i, i));
        }
        return alone;
    }

    private static RealMatrix symmetric(RealMatrix matrix) {
        return matrix.add(matrix.transpose()).scalarMultiply(0.5);
    }

    private boolean isOpen(PointingModel model) {
        double finest = model.centrings().stream()
                .mapToDouble(c -> c.sigma().radians())
                .min()
                .orElse(0);
        return sigma.radians() > MANY_CENTRINGS * finest
                || together.entrySet().stream()
                        .anyMatch(e -> !new TermEstimate(
                                        e.getKey(),
                                        Angle.ZERO,
                                        sigma.times(Math.abs(e.getValue())),
                                        e.getKey().usualSize())
                                .isSupported());
    }

    private static InseparableTerms of(
            PointingModel model, List<PointingTerm> all, List<PointingTerm> moved, RealVector way, double sigma) {
        RealVector together = MatrixUtils.createRealVector(
                moved.stream().mapToDouble(t -> way.getEntry(all.indexOf(t))).toArray());
        EigenDecompositionSymmetric axes = new EigenDecompositionSymmetric(among(model.covariance(), moved));
        int best = moved.size() - 1;
        RealVector known = axes.getEigenvector(best);
        double knownSigma = Math.sqrt(Math.max(0, axes.getEigenvalue(best)));
        return new InseparableTerms(
                weights(moved, together),
                new Angle(sigma * together.getLInfNorm()),
                weights(moved, known),
                new Angle(knownSigma / known.getLInfNorm()));
    }

    /** Scaled so that the largest is +1. */
    private static Map<PointingTerm, Double> weights(List<PointingTerm> terms, RealVector values) {
        double largest = values.getMaxValue() >= -values.getMinValue() ? values.getMaxValue() : values.getMinValue();
        Map<PointingTerm, Double> weights = new EnumMap<>(PointingTerm.class);
        for (int i = 0; i < terms.size(); i++) {
            weights.put(terms.get(i), values.getEntry(i) / largest);
        }
        return weights;
    }

    private static RealMatrix among(RealMatrix covariance, List<PointingTerm> terms) {
        int[] columns = terms.stream().mapToInt(PointingTerm::column).toArray();
        return covariance.getSubMatrix(columns, columns);
    }
}
