package polewright.bench.frames;

import java.util.random.RandomGenerator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.place.CatalogueStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/** Unit vectors on the sky, some of them random. */
final class Directions {
    private Directions() {}

    static Vector3D of(CatalogueStar star) {
        return new Vector3D(star.rightAscension().radians(), star.declination().radians());
    }

    /** Uniform over a spherical cap. */
    static Vector3D within(Vector3D middle, Angle radius, RandomGenerator random) {
        double cosine = 1 - random.nextDouble() * (1 - radius.cos());
        double sine = Math.sqrt(1 - cosine * cosine);
        double around = 2 * Math.PI * random.nextDouble();
        Vector3D first = middle.orthogonal();
        Vector3D second = middle.crossProduct(first);
        return new Vector3D(cosine, middle, sine * Math.cos(around), first, sine * Math.sin(around), second);
    }

    /** The ICRS direction, epoch of the moment, seen in a direction over the site. */
    static Vector3D lookedAt(Vector3D enu, ObservingMoment moment) {
        return of(moment.catalogueDirection(
                moment.apparent(moment.hourAngle(moment.airless(new RefractedDirection(enu))))));
    }
}
