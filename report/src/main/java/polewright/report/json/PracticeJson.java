package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.IntFunction;
import polewright.mount.AxisOffset;
import polewright.simulation.practice.CompletedAction;
import polewright.simulation.practice.Debrief;
import polewright.simulation.practice.ObservedReadings;
import polewright.simulation.practice.PracticeState;

/** A practice night as JSON; the truth appears only in the debrief. */
public final class PracticeJson {
    private PracticeJson() {}

    public static ObjectNode of(PracticeState state) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("site", state.scenario().siteName());
        node.put("seed", state.scenario().seed());
        node.put("camera", state.scenario().hasCamera());
        node.put("now", state.now().toString());
        node.put("clamped", state.clamped());
        node.put("frames", state.frames());
        return node;
    }

    /**
     * An action and what it showed.
     *
     * @param files location of the frame with that number
     */
    public static ObjectNode of(CompletedAction done, PracticeState state, IntFunction<Path> files) {
        ObjectNode node = of(state);
        node.put("kind", done.action().kind().name().toLowerCase(Locale.ROOT));
        node.put("took_s", done.took().toSeconds());
        ObjectNode seen = node.putObject("seen");
        done.seen().accept(new Readings(seen, files));
        return node;
    }

    public static ObjectNode of(Debrief debrief) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("total_s", debrief.total().toSeconds());
        ObjectNode kinds = node.putObject("by_kind_s");
        debrief.byKind().forEach((kind, took) -> kinds.put(kind.name().toLowerCase(Locale.ROOT), took.toSeconds()));
        ArrayNode unneeded = node.putArray("not_needed");
        debrief.unneeded()
                .forEach(waste -> unneeded.addObject()
                        .put("from", waste.action().from().toString())
                        .put("kind", waste.action().action().kind().name().toLowerCase(Locale.ROOT))
                        .put("reason", waste.reason().name().toLowerCase(Locale.ROOT))
                        .put("cost_s", waste.cost().toSeconds()));
        put(node.putObject("at_first"), debrief.atFirst());
        put(node.putObject("truth"), debrief.truth());
        node.put("within", debrief.within());
        debrief.stopAdvised().ifPresent(at -> node.put("stop_advised", at.toString()));
        put(node.putObject("advised"), debrief.advised());
        put(node.putObject("plain"), debrief.plain());
        return node;
    }

    private static void put(ObjectNode node, AxisOffset offset) {
        node.put("east_arcmin", offset.east().arcminutes());
        node.put("up_arcmin", offset.up().arcminutes());
    }

    private static void put(ObjectNode node, Debrief.Routine routine) {
        node.put("took_s", routine.took().toSeconds());
        node.put("within", routine.within());
    }

    private record Readings(ObjectNode node, IntFunction<Path> files) implements ObservedReadings.Visitor<ObjectNode> {
        @Override
        public ObjectNode nothing(ObservedReadings.Nothing seen) {
            return node;
        }

        @Override
        public ObjectNode onCompass(ObservedReadings.OnCompass compass) {
            node.put("bearing_deg", compass.bearingDeg());

            return node;
        }

        @Override
        public ObjectNode onScale(ObservedReadings.OnScale scale) {
            node.put("altitude_deg", scale.altitudeDeg());

            return node;
        }

        @Override
        public ObjectNode whileRocking(ObservedReadings.WhileRocking rocking) {
            node.put("optic", rocking.optic().name());
            rocking.star().ifPresent(star -> {
                node.put("star", star.star());
                node.put("distance_fields", star.fields());
                node.put("toward_clock", star.clock());
            });

            return node;
        }

        @Override
        public ObjectNode drifted(ObservedReadings.Drifted drifted) {
            node.put("star", drifted.star());
            node.put("minutes", drifted.length().toSeconds() / 60.0);
            node.put("moved", drifted.moved().count());
            node.put("unit", drifted.moved().unit().words());
            node.put("toward", drifted.northward() ? "north" : "south");
            drifted.optic().ifPresent(optic -> node.put("optic", optic.name()));

            return node;
        }

        @Override
        public ObjectNode frameTaken(ObservedReadings.FrameTaken taken) {
            node.put("frame", taken.number());
            node.put("file", files.apply(taken.number()).toString());

            return node;
        }
    }
}
