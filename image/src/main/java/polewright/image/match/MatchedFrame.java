package polewright.image.match;

import java.util.List;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.ObservingMoment;

/**
 * A frame whose place in the sky is known.
 *
 * @param plate pixels to ICRS directions and back
 * @param model how much of the lens was fitted
 * @param covariance of the plate's turn
 * @param pairs the stars that it was fitted to, brightest on the frame first
 * @param starsFound on the frame
 * @param rmsArcsec root mean square of how far those stars are off, arcseconds, both coordinates together
 * @param logOdds natural logarithm of the odds that the match is right, the search paid for
 */
public record MatchedFrame(
        Plate plate,
        PlateModel model,
        RotationCovariance covariance,
        List<StarPair> pairs,
        int starsFound,
        double rmsArcsec,
        double logOdds)
        implements MatchOutcome {
    public MatchedFrame {
        pairs = List.copyOf(pairs);
    }

    public int starsMatched() {
        return pairs.size();
    }

    /**
     * Where the camera stood over the ground: the plate fitted again to where these stars appear through the air there
     * and then.
     */
    public CameraAttitude attitude(ObservingMoment moment, StarAtlas atlas) {
        return AttitudeFit.of(this, moment, atlas);
    }
}
