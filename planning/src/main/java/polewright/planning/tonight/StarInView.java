package polewright.planning.tonight;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/**
 * A bright star with its place at one moment.
 *
 * @param place relative to the true pole, without refraction
 * @param airless geometric direction
 * @param direction apparent direction
 */
public record StarInView(NamedStar star, HourAnglePlace place, AirlessDirection airless, RefractedDirection direction) {
    static StarInView of(NamedStar star, ObservingMoment moment) {
        var apparent = moment.apparent(star.place());
        AirlessDirection airless = moment.airless(apparent);
        return new StarInView(star, moment.hourAngle(apparent), airless, moment.refracted(apparent));
    }

    public String name() {
        return star.label();
    }

    public double magnitude() {
        return star.magnitude();
    }

    public Angle altitude() {
        return direction.altitude();
    }

    /** Apparent separation. */
    public Angle separation(StarInView other) {
        return new Angle(Vector3D.angle(direction.enu(), other.direction.enu()));
    }
}
