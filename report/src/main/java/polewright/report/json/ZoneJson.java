package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.allowance.ItemTolerance;
import polewright.alignment.allowance.WorkZone;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.WorkItem;
import polewright.mount.AxisOffset;

/** The tolerance on the axis and its reasons as JSON. */
public final class ZoneJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private ZoneJson() {}

    /** Its size and best aim. */
    public static ObjectNode of(Allowance allowance) {
        ObjectNode node = NODES.objectNode();
        node.put("shape", allowance instanceof DiscAllowance ? "disc" : "zone");
        node.put("words", allowance.words());
        node.put("depth_arcmin", allowance.depth().arcminutes());
        putOffset(node.putObject("best_aim"), allowance.bestAim());
        if (allowance instanceof WorkZone zone) {
            node.put("strictest", zone.strictest());
        }
        return node;
    }

    /** The same with its edge, the work and the tolerance of each item. */
    public static ObjectNode full(Allowance allowance, List<ItemTolerance> tolerances) {
        ObjectNode node = of(allowance);
        putSpan(node, "east", allowance.eastSpan());
        allowance.upSpanAt(allowance.bestAim().east()).ifPresent(span -> putSpan(node, "up", span));
        if (allowance instanceof WorkZone zone) {
            ArrayNode work = node.putArray("work");
            zone.work().items().forEach(item -> work.add(item(item, tolerances)));
            ArrayNode edges = node.putArray("edges");
            zone.edges().forEach(edge -> {
                ObjectNode one = edges.addObject();
                putOffset(one, edge.from());
                one.put("item", edge.item());
                one.put("cause", word(edge.cause()));
            });
        }
        return node;
    }

    private static ObjectNode item(WorkItem item, List<ItemTolerance> tolerances) {
        ObjectNode node = NODES.objectNode();
        item.accept(new ItemNode(node));
        tolerances.stream()
                .filter(t -> t.item().equals(item))
                .findFirst()
                .ifPresent(t -> node.set("alone", of(t.alone())));
        return node;
    }

    private static void putSpan(ObjectNode node, String what, Allowance.Span span) {
        node.put(what + "_from_arcmin", span.low().arcminutes());
        node.put(what + "_to_arcmin", span.high().arcminutes());
    }

    private static void putOffset(ObjectNode node, AxisOffset offset) {
        node.put("east_arcmin", offset.east().arcminutes());
        node.put("up_arcmin", offset.up().arcminutes());
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(java.util.Locale.ROOT);
    }

    private record RegionNode(ObjectNode node) implements SkyRegion.Visitor<ObjectNode> {
        @Override
        public ObjectNode track(SkyRegion.Track track) {
            node.put("kind", "track");
            node.put("label", track.label());
            node.put("dec_of_date_deg", track.declination().degrees());
            node.put("hour_angle_from_deg", track.from().degrees());
            node.put("hour_angle_to_deg", track.to().degrees());

            return node;
        }

        @Override
        public ObjectNode above(SkyRegion.Above above) {
            node.put("kind", "above");
            node.put("altitude_deg", above.lowestAltitude().degrees());
            if (above.toThePole()) {
                node.put("to_the_pole", true);
            }

            return node;
        }
    }

    private record ItemNode(ObjectNode node) implements WorkItem.Visitor<ObjectNode> {
        @Override
        public ObjectNode visualObservation(VisualObservation item) {
            putWhat("look", item);
            node.put("field_deg", item.field().degrees());
            node.put("stay_min", item.stay().toMillis() / 60000.0);
            item.goToWithin().ifPresent(within -> node.put("go_to_within_arcmin", within.arcminutes()));
            if (item.finding() instanceof VisualObservation.Finding.ByHand) {
                node.put("by_hand", true);
            }
            return node;
        }

        @Override
        public ObjectNode imagingRun(ImagingRun item) {
            putWhat("shot", item);
            node.put("camera", item.camera().name());
            node.put("scale_arcsec_px", item.camera().perPixel().arcseconds());
            node.put("sub_exposure_s", item.subExposure().toMillis() / 1000.0);
            node.put("total_min", item.total().toMillis() / 60000.0);
            if (item.guiding() instanceof Guiding.Guided guided) {
                node.put("guide_star_arcmin", guided.starDistance().arcminutes());
            }
            return node.put("tolerance_arcsec", item.tolerance().arcseconds());
        }

        private void putWhat(String kind, WorkItem item) {
            node.put("kind", kind);
            node.put("name", item.name());
            item.region().accept(new RegionNode(node.putObject("region")));
        }
    }
}
