package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import polewright.sky.almanac.Crossing;
import polewright.sky.almanac.Darkness;
import polewright.sky.almanac.LunarPhase;
import polewright.sky.almanac.MoonTonight;
import polewright.sky.almanac.SunDepth;
import polewright.sky.time.Interval;

/** Darkness and the Moon as JSON: times in UTC, to the second. */
public final class DarknessJson {
    private DarknessJson() {}

    public static ObjectNode of(Darkness darkness, MoonTonight moon, ZoneId zone) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("zone", zone.getId());
        put(node.putObject("noon_to_noon"), darkness.noonToNoon());
        for (SunDepth depth : SunDepth.values()) {
            String key = "below_" + depth.name().toLowerCase(Locale.ROOT);
            darkness.below(depth)
                    .ifPresentOrElse(interval -> put(node.putObject(key), interval), () -> node.putNull(key));
        }
        node.put("sun_lowest_at", toTheSecond(darkness.midnight().at()));
        node.put("sun_lowest_deg", darkness.midnight().altitude().degrees());
        node.put("sun_highest_deg", darkness.noon().altitude().degrees());
        node.put("polar_day", darkness.isPolarDay());
        node.put("polar_night", darkness.isPolarNight());
        node.put("astronomical_darkness", darkness.hasAstronomicalDarkness());
        node.set("moon", moon(moon));
        return node;
    }

    private static ObjectNode moon(MoonTonight moon) {
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
                    .put("at", toTheSecond(crossing.at()));
        }
        put(node.putArray("up"), moon.up());
        put(node.putArray("up_in_darkest"), moon.upInDarkest());
        put(node.putArray("moonless"), moon.moonless());
        return node;
    }

    private static void put(ArrayNode array, List<Interval> intervals) {
        intervals.forEach(interval -> put(array.addObject(), interval));
    }

    private static void put(ObjectNode node, Interval interval) {
        node.put("from", toTheSecond(interval.from()));
        node.put("to", toTheSecond(interval.to()));
    }

    private static String toTheSecond(Instant at) {
        return at.plusMillis(500).truncatedTo(ChronoUnit.SECONDS).toString();
    }
}
