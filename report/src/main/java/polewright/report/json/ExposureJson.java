package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import polewright.alignment.allowance.ExposureLimits.Limit;
import polewright.session.ExposureOutlook;

/** The longest exposures as JSON. */
public final class ExposureJson {
    private ExposureJson() {}

    public static ArrayNode of(List<ExposureOutlook> shots) {
        ArrayNode nodes = JsonNodeFactory.instance.arrayNode();
        for (ExposureOutlook outlook : shots) {
            ObjectNode node = nodes.addObject();
            node.put("name", outlook.shot().name());
            node.put("wanted_s", outlook.shot().subExposure().toMillis() / 1000.0);
            putLimit(node.putObject("now"), outlook.now());
            outlook.next().ifPresent(after -> {
                ObjectNode next = node.putObject("after_one_more_adjustment");
                putLimit(next, after.limit());
                next.put("minutes", after.minutes());
            });
            node.put("long_enough", outlook.isLongEnough());
            node.put("worth_adjusting", outlook.isWorthAdjusting());
        }
        return nodes;
    }

    private static void putLimit(ObjectNode node, Limit limit) {
        node.put("unguided_s", limit.unguided().toMillis() / 1000.0);
        node.put("guided_s", limit.guided().toMillis() / 1000.0);
    }
}
