package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.chart.FieldChart;
import polewright.drawing.chart.GuideStar;
import polewright.sky.angle.Angle;

/** A field chart as JSON: positions in arcminutes to the right and up in the view. */
public final class ChartJson {
    private ChartJson() {}

    public static ObjectNode of(FieldChart chart, String optic, Optional<GuideStar> guide, List<String> notes) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("target", chart.target().label());
        node.put("at", chart.moment().time().utc().toString());
        node.put("az_deg", chart.sky().middle().azimuth().degrees());
        node.put("alt_apparent_deg", chart.sky().middle().altitude().degrees());
        node.put("optic", optic);
        node.put("field_deg", chart.field().degrees());
        node.put("faintest_mag", chart.faintest());
        guide.ifPresent(star -> node.putObject("guide_star")
                .put("name", star.star().label())
                .put("distance_deg", star.distance().degrees())
                .put("way_right", star.towardTarget().getX())
                .put("way_up", star.towardTarget().getY()));
        ArrayNode stars = node.putArray("stars");
        for (FieldChart.Star star : chart.stars()) {
            ObjectNode one = place(stars.addObject(), star.place()).put("mag", star.magnitude());
            star.name().ifPresent(name -> one.put("name", name));
        }
        ArrayNode objects = node.putArray("objects");
        chart.objects()
                .forEach(mark -> place(objects.addObject(), mark.place())
                        .put("name", mark.label())
                        .put("radius_arcmin", mark.radius().arcminutes()));
        notes.forEach(node.putArray("notes")::add);
        return node;
    }

    private static ObjectNode place(ObjectNode node, Vector2D place) {
        return node.put("right_arcmin", new Angle(place.getX()).arcminutes())
                .put("up_arcmin", new Angle(place.getY()).arcminutes());
    }
}
