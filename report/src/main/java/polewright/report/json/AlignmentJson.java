package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import polewright.planning.tonight.AlignmentOutcome;
import polewright.planning.tonight.AlignmentStar;
import polewright.planning.tonight.StarSurroundings;

/** Alignment stars as JSON. */
public final class AlignmentJson {
    private AlignmentJson() {}

    public static ObjectNode of(AlignmentOutcome outcome, Instant at, double apertureMm) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("at", at.toString());
        node.put("aperture_mm", apertureMm);
        ArrayNode stars = node.putArray("stars");
        if (outcome instanceof AlignmentOutcome.Chosen chosen) {
            node.put("sun_up", chosen.isSunUp());
            chosen.stars().forEach(star -> stars.add(star(star)));
            chosen.expectedError().ifPresent(error -> node.put("goto_95_arcmin", error.arcminutes()));
        } else if (outcome instanceof AlignmentOutcome.Nothing nothing) {
            node.put("sun_up", nothing.isSunUp());
            node.put("way_barred_by_sun", nothing.isBlockedBySun());
            ObjectNode exclusions = node.putObject("hurdles");
            nothing.exclusions().forEach((hurdle, count) -> exclusions.put(lower(hurdle), count));
        }
        outcome.visibleByEyeFrom().ifPresent(out -> node.put("out_by_eye_at", out.toString()));
        return node;
    }

    private static ObjectNode star(AlignmentStar star) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("star", star.seen().name());
        node.put("magnitude", star.seen().magnitude());
        node.put("az_deg", star.seen().direction().azimuth().degrees());
        node.put("alt_apparent_deg", star.seen().altitude().degrees());
        node.put("hour_angle_deg", star.seen().place().hourAngle().degrees());
        node.put("dec_of_date_deg", star.seen().place().declination().degrees());
        node.put("by_eye", star.isSeenByEye());
        node.put("brightest_within_20_deg", star.isBrightestAround());
        star.around().colour().ifPresent(colour -> node.put("colour", colour.words()));
        node.put("constellation", star.around().constellation().abbreviation());
        node.put("brightest_of_constellation", star.around().isItsBrightest());
        putNeighbours(node.putArray("guides"), star.around().guides());
        putNeighbours(node.putArray("lookalikes"), star.around().lookalikes());
        putNeighbours(node.putArray("planets"), star.around().planets());
        ObjectNode move = node.putObject("move");
        move.put("lower_axis_deg", star.move().longitude().degrees());
        move.put("upper_axis_deg", star.move().latitude().degrees());
        move.put("order", lower(star.move().order()));
        return node;
    }

    private static void putNeighbours(ArrayNode array, List<StarSurroundings.Neighbour> neighbours) {
        neighbours.forEach(neighbour -> {
            ObjectNode node = array.addObject();
            node.put("name", neighbour.name());
            node.put("distance_deg", neighbour.distance().degrees());
            node.put("side", lower(neighbour.side()));
            neighbour.isBrighter().ifPresent(isBrighter -> node.put("brighter", isBrighter));
        });
    }

    private static String lower(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
