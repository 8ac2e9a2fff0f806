package polewright.app.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import polewright.sky.almanac.Crossing;
import polewright.sky.almanac.Darkness;
import polewright.sky.almanac.LunarPhase;
import polewright.sky.almanac.MoonTonight;
import polewright.sky.almanac.SunDepth;
import polewright.sky.time.Interval;

/** How dark the night gets and what the Moon does, as JSON: instants with the offset of the zone, to the second. */
public final class DarknessJson {
    private DarknessJson() {}

    public static ObjectNode of(Darkness darkness, MoonTonight moon, ZoneId zone) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("zone", zone.getId());
        put(node.putObject("noon_to_noon"), darkness.noonToNoon(), zone);
        for (SunDepth depth : SunDepth.values()) {
            String key = "below_" + depth.name().toLowerCase(Locale.ROOT);
            darkness.below(depth)
                    .ifPresentOrElse(interval -> put(node.putObject(key), interval, zone), () -> node.putNull(key));
        }
        node.put("sun_lowest_at", local(darkness.midnight().at(), zone));
        node.put("sun_lowest_deg", darkness.midnight().altitude().degrees());
        node.put("sun_highest_deg", darkness.noon().altitude().degrees());
        node.put("polar_day", darkness.isPolarDay());
        node.put("polar_night", darkness.isPolarNight());
        node.put("true_night", darkness.hasTrueNight());
        node.set("moon", moon(moon, zone));
        return node;
    }

    private static ObjectNode moon(MoonTonight moon, ZoneId zone) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        LunarPhase phase = moon.phase();
        node.put("lit_share", phase.litShare());
        node.put("phase", phase.words());
        node.put("waxing", phase.isWaxing());
        node.put("phase_angle_deg", phase.phaseAngle().degrees());
        node.put("elongation_deg", phase.elongation().degrees());
        ArrayNode crossings = node.putArray("crossings");
        for (Crossing crossing : moon.crossings()) {
            crossings
                    .addObject()
                    .put("what", crossing.sense() == Crossing.Sense.RISING ? "rises" : "sets")
                    .put("at", local(crossing.at(), zone));
        }
        put(node.putArray("up"), moon.up(), zone);
        put(node.putArray("up_in_darkest"), moon.upInDarkest(), zone);
        put(node.putArray("moonless"), moon.moonless(), zone);
        return node;
    }

    private static void put(ArrayNode array, List<Interval> intervals, ZoneId zone) {
        intervals.forEach(interval -> put(array.addObject(), interval, zone));
    }

    private static void put(ObjectNode node, Interval interval, ZoneId zone) {
        node.put("from", local(interval.from(), zone));
        node.put("to", local(interval.to(), zone));
    }

    private static String local(Instant at, ZoneId zone) {
        return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
                at.plusMillis(500).truncatedTo(ChronoUnit.SECONDS).atZone(zone));
    }
}
