package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import polewright.sky.place.Horizon;

/** The skyline as JSON, with the keys of its event. */
public final class HorizonJson {
    private HorizonJson() {}

    public static ObjectNode of(Horizon horizon) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ArrayNode skyline = node.putArray("skyline");
        horizon.points()
                .forEach(point -> skyline.addObject()
                        .put("az_deg", point.azimuth().degrees())
                        .put("alt_deg", point.altitude().degrees()));
        return node;
    }
}
