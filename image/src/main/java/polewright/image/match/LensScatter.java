package polewright.image.match;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealVector;

/**
 * The factor by which the scatter of a plate's rotation exceeds its covariance: one part of the frame after another is
 * left out (a jackknife), and the changes of the rotation are compared with those expected from centring errors alone.
 * Where the lens model is wrong, or the stars of a corner are chance pairs, the errors of neighbours are correlated,
 * and the rotation depends on the part that is left out.
 */
final class LensScatter {
    private static final int FEWEST_STARS_A_PART = 3;
    private static final int MOST_ACROSS = 3;
    // The covariance is weighted as if it came from this many measurements of the same kind: with fewer the parts' own
    // scatter would be taken for the lens's, with many more a bad corner would be averaged away.
    private static final double PRIOR_FREEDOM = 12;

    private LensScatter() {}

    /** The factor on the variances, 1 or more. */
    static double factor(PlateFit fit, PlateFit.Pairs pairs, PlateModel model) {
        int across = Math.min(MOST_ACROSS, (int) Math.sqrt(pairs.count() / (double) FEWEST_STARS_A_PART));
        if (across < 2) {
            return 1;
        }
        int parts = across * across;
        return fit.withoutEachPart(pairs, partOf(pairs, across), parts, model)
                .map(LensScatter::excess)
                .map(excess -> Math.max(1, (3 * parts * excess + PRIOR_FREEDOM) / (3 * parts + PRIOR_FREEDOM)))
                .orElse(1.0);
    }

    /** The squared changes of rotation, relative to those from centring errors alone: mean 1 if there are no others. */
    private static double excess(List<PlateFit.LeftOut> parts) {
        double sum = 0;
        for (PlateFit.LeftOut part : parts) {
            RealVector turn = MatrixUtils.createRealVector(part.turn().toArray());
            sum += turn.dotProduct(MatrixUtils.inverse(part.covariance()).operate(turn)) / 3;
        }
        return sum / parts.size();
    }

    /** Columns with equal numbers of stars, each divided into parts with equal numbers of stars. */
    private static int[] partOf(PlateFit.Pairs pairs, int across) {
        int[] part = new int[pairs.count()];
        int[] byX = sorted(IntStream.range(0, pairs.count()).toArray(), pairs.x());
        for (int column = 0; column < across; column++) {
            int[] inColumn = Arrays.copyOfRange(byX, column * byX.length / across, (column + 1) * byX.length / across);
            int[] byY = sorted(inColumn, pairs.y());
            for (int k = 0; k < byY.length; k++) {
                part[byY[k]] = column * across + k * across / byY.length;
            }
        }
        return part;
    }

    private static int[] sorted(int[] stars, PlateFit.Column by) {
        return Arrays.stream(stars)
                .boxed()
                .sorted(Comparator.comparingDouble(by::at))
                .mapToInt(i -> i)
                .toArray();
    }
}
