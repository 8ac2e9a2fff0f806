package polewright.mount.pointing;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.hipparchus.linear.RealMatrix;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;

/**
 * The sky that go-tos are wanted in, worked out once by a model so that many stars can be tried
 * ({@link PointingModel#after}) cheaply.
 */
public final class GoToSky {
    private final List<RealMatrix> designs;

    private GoToSky(List<RealMatrix> designs) {
        this.designs = designs;
    }

    /**
     * Of these places, each counted alike.
     *
     * @param model its terms; how well they are known does not matter
     */
    public static GoToSky of(PointingModel model, List<HourAnglePlace> places) {
        return new GoToSky(places.stream().map(model::designAt).toList());
    }

    /** Root mean square over the sky of the distance within which 95 of 100 go-tos land. */
    public Angle nineteenOfTwenty(PointingModel model) {
        double mean = designs.stream()
                .mapToDouble(d -> Math.pow(model.goToError(d).nineteenOfTwenty().radians(), 2))
                .average()
                .orElse(0);
        return new Angle(Math.sqrt(mean));
    }

    /** Which of these places, if a star was centred there next, would leave the smallest error over this sky. */
    public OptionalInt best(PointingModel model, List<HourAnglePlace> candidates, Angle sigma) {
        double[] left = candidates.stream()
                .mapToDouble(c -> nineteenOfTwenty(model.after(c, sigma)).radians())
                .toArray();
        return IntStream.range(0, left.length).reduce((a, b) -> left[b] < left[a] ? b : a);
    }
}
