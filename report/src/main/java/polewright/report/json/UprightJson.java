package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import polewright.alignment.allowance.ExposureLimits;
import polewright.mount.rig.Camera;
import polewright.planning.tonight.UprightExposures;

/** The exposures that a fork in altazimuth set-up allows, as JSON. */
public final class UprightJson {
    private static final int STEP_DEG = 15;

    private UprightJson() {}

    public static ObjectNode of(
            UprightExposures upright, Camera camera, Duration wanted, ExposureLimits.Limit onWedge) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("camera", camera.name())
                .put("tolerance_arcsec", upright.tolerance().arcseconds())
                .put("wanted_s", seconds(wanted))
                .put("share_of_sky", upright.shareOfSky(wanted))
                .put("wedge_guided_s", seconds(onWedge.guided()))
                .put("wedge_unguided_s", seconds(onWedge.unguided()));
        ArrayNode longest = node.putArray("longest");
        for (int altitude = 2 * STEP_DEG; altitude < 90; altitude += STEP_DEG) {
            for (int azimuth = 0; azimuth < 360; azimuth += STEP_DEG) {
                longest.addObject()
                        .put("az_deg", azimuth)
                        .put("alt_deg", altitude)
                        .put("s", seconds(upright.longest(azimuth, altitude)));
            }
        }
        return node;
    }

    private static double seconds(Duration duration) {
        return duration.toMillis() / 1000.0;
    }
}
