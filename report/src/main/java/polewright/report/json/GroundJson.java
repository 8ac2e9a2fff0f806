package polewright.report.json;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import polewright.mount.rig.HomePosition;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Orientation;
import polewright.session.GroundPlan;
import polewright.sky.time.LeapSeconds;

/** The set-up before dark as JSON. */
public final class GroundJson {
    private GroundJson() {}

    public static ObjectNode of(GroundPlan plan, MountKind mount) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("at", plan.at().toString());
        node.put("compass_bearing_deg", plan.compassBearing().degrees());
        node.put("declination_deg", plan.declination().degrees());
        node.put("declination_sigma_deg", plan.declinationSigma().degrees());
        node.put("compass_north_deg", plan.compassNorth().degrees());
        if (mount.hasPolarAxis()) {
            node.put("wedge_scale_deg", plan.site().poleAltitude().degrees());
        }
        plan.shadow().ifPresent(shadow -> {
            node.put("shadow_azimuth_deg", shadow.azimuth().degrees());
            node.put("axis_clockwise_of_shadow_deg", shadow.axisClockwise().degrees());
        });
        node.put("next_sun_transit", plan.nextSunTransit().toString());
        ObjectNode star = node.putObject("pole_star");
        star.put("name", plan.poleStarName());
        star.put("distance_arcmin", plan.poleStarDistance().arcminutes());
        star.put("hour_angle_deg", plan.poleStarHourAngle().degrees());
        for (Orientation view : Orientation.values()) {
            star.put(
                    "clockwise_from_top_" + view.name().toLowerCase(Locale.ROOT) + "_deg",
                    plan.poleStarClock(view).degrees());
        }
        HomePosition.of(mount, plan.site()).lines().forEach(node.putArray("home")::add);
        var notes = node.putArray("notes");
        plan.magneticNotes().forEach(notes::add);
        LeapSeconds.note(plan.at()).ifPresent(notes::add);
        return node;
    }
}
