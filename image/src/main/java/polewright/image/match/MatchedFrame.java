package polewright.image.match;

import java.util.List;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.ObservingMoment;

/**
 * A frame whose position in the sky is known.
 *
 * @param plate pixels to ICRS directions and back
 * @param model the distortion model that was fitted
 * @param covariance of the plate's rotation
 * @param pairs the stars used in the fit, brightest on the frame first
 * @param starsFound on the frame
 * @param rmsArcsec root mean square residual of those stars, arcseconds, both coordinates together
 * @param logOdds natural logarithm of the odds that the match is right, after correcting for the number of trials
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
     * The camera's attitude in ENU: the plate refitted to the apparent, refracted directions of these stars at that
     * place and time.
     */
    public CameraAttitude attitude(ObservingMoment moment, StarAtlas atlas) {
        return AttitudeFit.of(this, moment, atlas);
    }
}
