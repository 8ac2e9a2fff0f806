package polewright.image.match;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.image.star.FoundStar;

/**
 * A star of the frame and its atlas star.
 *
 * @param found on the frame
 * @param atlasNumber its number in the atlas, see {@link polewright.sky.atlas.StarAtlas#star}
 * @param catalogue its ICRS direction at the year of the match
 * @param magnitude in the atlas
 * @param sigmaPixels 1 sigma of a coordinate, of centring and atlas combined
 * @param residualArcsec residual from the fitted plate, arcseconds
 */
public record StarPair(
        FoundStar found,
        int atlasNumber,
        Vector3D catalogue,
        double magnitude,
        double sigmaPixels,
        double residualArcsec) {}
