package polewright.simulation.camera;

import java.time.Instant;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.CatalogueStar;

/**
 * The true values of a rendered frame.
 *
 * @param middle of the exposure
 * @param view from sky to pixels at the middle of the exposure
 * @param scalePerPixel pixel scale at the centre
 * @param stars in the picture at the middle of the exposure, from the atlas and invented, brightest first; those
 *     under clouds too, with the light that came through
 */
public record SkyTruth(Instant middle, SkyView view, Angle scalePerPixel, List<TrueStar> stars) {
    public SkyTruth {
        stars = List.copyOf(stars);
    }

    /** The camera's true attitude at the middle of the exposure. */
    public CameraAttitude attitude() {
        return CameraAttitude.of(middle, view.cameraToEnu(), RotationCovariance.ofSigmas(Angle.ZERO, Angle.ZERO));
    }

    /** The ICRS direction of the centre of the picture. */
    public CatalogueStar centre() {
        return view.icrsAt(view.projection().centreX(), view.projection().centreY());
    }

    /** Position angle of the picture's up at its centre, from ICRS north through east, [0, 360°). */
    public Angle roll() {
        CatalogueStar middleOfPicture = centre();
        Vector3D here = icrs(middleOfPicture);
        Vector3D up = icrs(view.icrsAt(
                        view.projection().centreX(), view.projection().centreY() - 1))
                .subtract(here);
        double ra = middleOfPicture.rightAscension().radians();
        double dec = middleOfPicture.declination().radians();
        Vector3D east = new Vector3D(-Math.sin(ra), Math.cos(ra), 0);
        Vector3D north = new Vector3D(-Math.sin(dec) * Math.cos(ra), -Math.sin(dec) * Math.sin(ra), Math.cos(dec));
        return new Angle(Math.atan2(up.dotProduct(east), up.dotProduct(north))).wrappedPositive();
    }

    public boolean mirrored() {
        return view.projection().mirrored();
    }

    /** The stars that are in the atlas. */
    public List<TrueStar> starsOfAtlas() {
        return stars.stream()
                .filter(star -> star.number() != TrueStar.OF_NO_ATLAS)
                .toList();
    }

    private static Vector3D icrs(CatalogueStar star) {
        return new Vector3D(star.rightAscension().radians(), star.declination().radians());
    }
}
