package polewright.report.json;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import polewright.sky.atlas.Constellation;
import polewright.sky.body.BodyPosition;

/** The position of a body as JSON. */
public final class WhereJson {
    private WhereJson() {}

    public static ObjectNode of(BodyPosition seen, Constellation constellation, List<String> notes) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("body", seen.body().label());
        node.put("at", seen.moment().time().utc().toString());
        node.put("ra_of_date_deg", seen.place().rightAscension().degrees());
        node.put("dec_of_date_deg", seen.place().declination().degrees());
        node.put("hour_angle_deg", seen.hourAngle().hourAngle().degrees());
        node.put("az_deg", seen.airless().azimuth().degrees());
        node.put("alt_deg", seen.airless().altitude().degrees());
        node.put("alt_apparent_deg", seen.refracted().altitude().degrees());
        node.put("sun_distance_deg", seen.sunDistance().degrees());
        node.put("constellation", constellation.abbreviation());
        notes.forEach(node.putArray("notes")::add);
        return node;
    }
}
