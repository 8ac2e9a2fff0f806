package polewright.mount.pointing;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.hipparchus.linear.RealMatrix;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;

/**
 * The region of sky for go-tos, prepared once for a model so that many candidate stars can be tried
 * ({@link PointingModel#after}) cheaply.
 */
public final class GoToSky {
    private final List<RealMatrix> designs;

    private GoToSky(List<RealMatrix> designs) {
        this.designs = designs;
    }

    /**
     * A set of places, weighted equally.
     *
     * @param model its terms; their covariance is not used
     */
    public static GoToSky of(PointingModel model, List<HourAnglePlace> places) {
        return new GoToSky(places.stream().map(model::designAt).toList());
    }

    /** Root mean square over the sky of the radius that contains 95 % of go-tos. */
    public Angle radius95(PointingModel model) {
        double mean = designs.stream()
                .mapToDouble(d -> Math.pow(model.goToError(d).radius95().radians(), 2))
                .average()
                .orElse(0);
        return new Angle(Math.sqrt(mean));
    }

    /** The index of the candidate that would leave the smallest error over this sky if it were centred next. */
    public OptionalInt best(PointingModel model, List<HourAnglePlace> candidates, Angle sigma) {
        double[] errors = candidates.stream()
                .mapToDouble(c -> radius95(model.after(c, sigma)).radians())
                .toArray();
        return IntStream.range(0, errors.length).reduce((a, b) -> errors[b] < errors[a] ? b : a);
    }
}
