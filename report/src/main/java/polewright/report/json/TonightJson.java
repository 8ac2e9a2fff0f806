package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.ZoneId;
import polewright.planning.tonight.NightPlan;
import polewright.planning.tonight.Observability;
import polewright.planning.tonight.Observing;
import polewright.planning.tonight.Purpose;
import polewright.planning.tonight.TargetOutcome;
import polewright.planning.tonight.TonightsExposure;
import polewright.planning.tonight.TonightsPlan;
import polewright.planning.tonight.TwilightCaution;
import polewright.report.text.ReachWords;
import polewright.sky.time.Interval;

/** The plan of a night as JSON. */
public final class TonightJson {
    private TonightJson() {}

    public static ObjectNode of(TonightsPlan tonight, ZoneId zone) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("at", tonight.evening().now().toString());
        Observing observing = tonight.observing();
        node.put("for", observing.purpose() == Purpose.EYES ? "eyes" : "camera");
        ArrayNode work = node.putArray("work");
        observing.kinds().stream().sorted().forEach(kind -> work.add(kind.words()));
        node.put("field_deg", observing.field().degrees());
        node.put("turn_min", observing.turn().toSeconds() / 60.0);
        node.set("darkness", DarknessJson.of(tonight.evening().darkness(), tonight.moon(), zone));
        ArrayNode cautions = node.putArray("sun_cautions");
        tonight.sunCautions().forEach(caution -> caution(cautions.addObject(), caution));
        ArrayNode slots = node.putArray("plan");
        for (NightPlan.Slot slot : tonight.plan().slots()) {
            ObjectNode one = interval(slots.addObject(), slot.when());
            showing(one, slot.showing());
            TonightsExposure.of(tonight.evening(), slot.showing())
                    .ifPresent(limit -> one.put(
                                    "longest_unguided_s", limit.unguided().toMillis() / 1000.0)
                            .put("longest_guided_s", limit.guided().toMillis() / 1000.0));
        }
        ArrayNode others = node.putArray("others");
        tonight.others().forEach(showing -> showing(others.addObject(), showing));
        ArrayNode missed = node.putArray("missed");
        tonight.missed()
                .forEach(outcome -> missed.addObject()
                        .put("target", outcome.target().label())
                        .put(
                                "why",
                                outcome instanceof TargetOutcome.OutOfReach out
                                        ? ReachWords.of(out.barrier())
                                        : "the night is not dark enough for it"));
        return node;
    }

    private static void caution(ObjectNode node, TwilightCaution caution) {
        node.put("what", caution.crossing() == TwilightCaution.Crossing.SETS ? "sunset" : "sunrise")
                .put("at", caution.at().toString());
        ArrayNode near = node.putArray("near");
        caution.near()
                .forEach(one -> near.addObject()
                        .put("target", one.target().label())
                        .put("distance_deg", one.distance().degrees()));
    }

    private static void showing(ObjectNode node, Observability showing) {
        node.put("target", showing.target().label())
                .put("kind", showing.target().kind())
                .put("wanted", showing.target().isWanted())
                .put("best", showing.best().toString())
                .put("best_alt_deg", showing.bestAltitude().degrees())
                .put("transit", showing.transit().toString())
                .put("moon_distance_deg", showing.moonDistance().degrees())
                .put("sky_mag_arcsec2", showing.sky())
                .put("score", showing.score());
        showing.target().magnitude().ifPresent(magnitude -> node.put("mag", magnitude));
        showing.target().surfaceBrightness().ifPresent(surface -> node.put("surface_mag_arcsec2", surface));
        if (showing.target().major().radians() > 0) {
            node.put("size_arcmin", showing.target().major().arcminutes());
        }
        ArrayNode windows = node.putArray("windows");
        showing.windows().forEach(window -> interval(windows.addObject(), window));
    }

    private static ObjectNode interval(ObjectNode node, Interval interval) {
        return node.put("from", interval.from().toString())
                .put("to", interval.to().toString());
    }
}
