package polewright.planning.tonight;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.place.AirlessDirection;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;

/**
 * A bright star where it stands at one moment.
 *
 * @param place about the true pole, without air
 * @param airless as geometry has it
 * @param direction as it is seen
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

    /** From one to the other as seen. */
    public Angle separation(StarInView other) {
        return new Angle(Vector3D.angle(direction.enu(), other.direction.enu()));
    }
}
