package polewright.image.match;

import java.time.temporal.ChronoUnit;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.InputRefused;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.place.ObservingMoment;

/** The camera's attitude in ENU, from a matched frame and the apparent directions of its stars at a site and time. */
final class AttitudeFit {
    private AttitudeFit() {}

    static CameraAttitude of(MatchedFrame frame, ObservingMoment moment, StarAtlas atlas) {
        List<StarPair> pairs = frame.pairs();
        List<Vector3D> seen = pairs.stream()
                .map(pair -> moment.refracted(
                                moment.apparent(atlas.star(pair.atlasNumber()).place()))
                        .enu())
                .toList();
        if (seen.stream().anyMatch(direction -> direction.getZ() < 0)) {
            throw new InputRefused(
                    "the stars on this frame were below the horizon at "
                            + moment.time().utc().truncatedTo(ChronoUnit.SECONDS),
                    "check the time and its zone, and the site's latitude and longitude");
        }
        int far = farthestFromFirst(pairs);
        Rotation skyToGround =
                new Rotation(pairs.get(0).catalogue(), pairs.get(far).catalogue(), seen.get(0), seen.get(far));
        Plate plate = frame.plate();
        Plate start = new Plate(
                plate.width(),
                plate.height(),
                plate.mirrored(),
                skyToGround.applyTo(plate.right()),
                skyToGround.applyTo(plate.down()),
                skyToGround.applyTo(plate.centre()),
                plate.pixelsPerRadian(),
                plate.distortion());
        PlateFit.Pairs placed = PlateFit.Pairs.of(pairs, seen::get);
        PlateFit fit = PlateFit.of(start, placed, frame.model())
                .orElseThrow(() -> new IllegalStateException("a plate that fits the atlas does not fit the sky"));
        double lens = LensScatter.factor(fit, placed, frame.model());
        return CameraAttitude.of(
                moment.time().utc(), fit.plate().cameraToSky(), fit.covariance().times(lens));
    }

    private static int farthestFromFirst(List<StarPair> pairs) {
        int far = 1;
        for (int i = 2; i < pairs.size(); i++) {
            if (distance(pairs, i) > distance(pairs, far)) {
                far = i;
            }
        }
        return far;
    }

    private static double distance(List<StarPair> pairs, int index) {
        return pairs.get(index).catalogue().distance(pairs.get(0).catalogue());
    }
}
