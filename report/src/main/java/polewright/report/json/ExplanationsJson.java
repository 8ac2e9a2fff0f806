package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import polewright.alignment.fix.Explanation;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.Mistake;
import polewright.mount.AxisOffset;

/** The explanations of a night that have not been ruled out, as JSON. */
final class ExplanationsJson {
    private ExplanationsJson() {}

    static ArrayNode of(Fix fix) {
        ArrayNode nodes = JsonNodeFactory.instance.arrayNode();
        fix.explanations().forEach(explanation -> nodes.add(of(explanation)));
        return nodes;
    }

    private static ObjectNode of(Explanation explanation) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("weight", explanation.weight());
        AxisOffset offset = explanation.state().offset();
        node.put("east_arcmin", offset.east().arcminutes());
        node.put("up_arcmin", offset.up().arcminutes());
        ArrayNode notUsed = node.putArray("not_used");
        explanation.notUsed().stream().sorted().forEach(notUsed::add);
        explanation.mistake().ifPresent(mistake -> node.set("mistake", of(mistake)));
        return node;
    }

    private static ObjectNode of(Mistake mistake) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ArrayNode events = JsonNodeFactory.instance.arrayNode();
        mistake.accept(new MistakeNode(node, events));
        if (!events.isEmpty()) {
            node.set("events", events);
        }
        node.put("words", mistake.words());
        return node;
    }

    private static double hours(Duration duration) {
        return duration.toSeconds() / 3600.0;
    }

    private record MistakeNode(ObjectNode node, ArrayNode events) implements Mistake.Visitor<ObjectNode> {
        @Override
        public ObjectNode turnMistaken(Mistake.TurnMistaken turn) {
            node.put("of", "turn");
            events.add(turn.seq());

            return node;
        }

        @Override
        public ObjectNode turnNotLogged(Mistake.TurnNotLogged missing) {
            node.put("of", "unlogged_turn");
            events.add(missing.meant().seq());

            return node;
        }

        @Override
        public ObjectNode sightingMisread(Mistake.SightingMisread sighting) {
            node.put("of", "sighting");
            events.add(sighting.seq());

            return node;
        }

        @Override
        public ObjectNode habitualMistake(Mistake.HabitualMistake habit) {
            node.put("of", "sightings");
            habit.misread().forEach(misread -> events.add(misread.seq()));

            return node;
        }

        @Override
        public ObjectNode clockWrong(Mistake.ClockWrong clock) {
            node.put("of", "clock");
            node.put("correction_h", hours(clock.correction()));

            return node;
        }

        @Override
        public ObjectNode siteWrong(Mistake.SiteWrong site) {
            node.put("of", "site");
            node.put("lat_deg", site.meant().latitude().degrees());
            node.put("lon_deg", site.meant().longitude().degrees());

            return node;
        }
    }
}
