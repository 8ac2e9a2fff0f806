package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.planning.seasons.AxisAtTime;
import polewright.planning.seasons.AxisTrend;
import polewright.planning.seasons.NightGap;
import polewright.planning.seasons.NightRecord;
import polewright.planning.seasons.PierMotion;
import polewright.planning.seasons.Seasons;

/** Nights compared, as JSON; angles in arcminutes on the sky, east and up positive. */
public final class SeasonsJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private SeasonsJson() {}

    /** All nights of a pier. */
    public static ObjectNode of(Seasons seasons) {
        ObjectNode node = NODES.objectNode();
        node.put("rig", seasons.pier().rig());
        node.put("lat_deg", seasons.pier().site().latitude().degrees());
        node.put("lon_deg", seasons.pier().site().longitude().degrees());
        ArrayNode nights = node.putArray("nights");
        seasons.nights().forEach(night -> nights.add(night(night)));
        ArrayNode gaps = node.putArray("between");
        if (seasons instanceof Seasons.Compared compared) {
            compared.gaps().forEach(gap -> gaps.add(gap(gap)));
            node.set("motion", motion(compared.motion()));
        } else if (seasons instanceof Seasons.TooFew few) {
            ObjectNode motion = node.putObject("motion");
            motion.put("status", "not_yet");
            motion.put("missing", few.missing());
        }
        return node;
    }

    /** Two nights and the gap between them. */
    public static ObjectNode compared(List<NightRecord> two, NightGap gap) {
        ObjectNode node = NODES.objectNode();
        ArrayNode nights = node.putArray("nights");
        two.forEach(night -> nights.add(night(night)));
        node.set("between", gap(gap));
        return node;
    }

    private static ObjectNode night(NightRecord night) {
        ObjectNode node = NODES.objectNode();
        node.put("night", night.id().number());
        node.put("begun_at", night.begunAt().toString());
        node.put("site_name", night.begun().siteName());
        node.put("rig", night.begun().rig().name());
        night.axisAtStart().ifPresent(found -> node.set("found", then(found)));
        night.axisAtEnd().ifPresent(left -> node.set("left", then(left)));
        ObjectNode sightings = node.putObject("sightings");
        night.sightings().forEach(sightings::put);
        node.put("turns", night.turns());
        node.put("minutes", night.taken().toSeconds() / 60.0);
        node.put("stopped", night.isStopped());
        ArrayNode contradicting = node.putArray("contradicting");
        night.contradictions().forEach(agreement -> {
            ObjectNode one = contradicting.addObject();
            one.put("seq", agreement.seq());
            one.put("kind", agreement.kind());
            agreement.likelyCause().ifPresent(cause -> one.put("likely_cause", cause));
        });
        return node;
    }

    private static ObjectNode then(AxisAtTime then) {
        ObjectNode node = NODES.objectNode();
        node.put("at", then.at().toString());
        put(node, then.offset());
        put(node, then.covariance());
        return node;
    }

    private static ObjectNode gap(NightGap gap) {
        ObjectNode node = NODES.objectNode();
        node.put("from_night", gap.from().id().number());
        node.put("to_night", gap.to().id().number());
        return gap.accept(new GapNode(node));
    }

    private static ObjectNode motion(PierMotion motion) {
        ObjectNode node = NODES.objectNode();
        if (motion instanceof PierMotion.NotYet notYet) {
            node.put("status", "not_yet");
            node.put("missing", notYet.missing());
        } else if (motion instanceof PierMotion.Fitted fitted) {
            node.put("status", fitted.isYearly() ? "line_and_year" : "line");
            node.put("from", fitted.from().toString());
            node.put("to", fitted.to().toString());
            node.put("drifts", fitted.drifts());
            node.set("east", course(fitted.east()));
            node.set("up", course(fitted.up()));
            node.put(
                    "undoing_a_month_azimuth_turns_clockwise",
                    fitted.monthlyCorrection().azimuth());
            node.put(
                    "undoing_a_month_altitude_turns_clockwise",
                    fitted.monthlyCorrection().altitude());
            ArrayNode setAside = node.putArray("set_aside");
            fitted.setAside().forEach(gap -> setAside.add(gap(gap)));
        }
        return node;
    }

    private static ObjectNode course(AxisTrend course) {
        ObjectNode node = NODES.objectNode();
        node.put("arcmin_per_month", course.arcminPerMonth());
        node.put("sigma_arcmin_per_month", course.sigmaPerMonth());
        node.put("shown", course.isShown());
        node.put("scatter_arcmin", course.scatterArcmin());
        course.swing().ifPresent(swing -> {
            node.put("swing_arcmin", swing.arcmin());
            node.put("swing_sigma_arcmin", swing.sigmaArcmin());
            node.put("greatest_at_share_of_year", swing.greatestAt());
        });
        return node;
    }

    private static void put(ObjectNode node, AxisOffset offset) {
        node.put("east_arcmin", offset.east().arcminutes());
        node.put("up_arcmin", offset.up().arcminutes());
    }

    private static void put(ObjectNode node, OffsetCovariance covariance) {
        ArrayNode rows = node.putArray("cov_arcmin2");
        rows.addArray().add(covariance.eastEastArcmin2()).add(covariance.eastUpArcmin2());
        rows.addArray().add(covariance.eastUpArcmin2()).add(covariance.upUpArcmin2());
    }

    private record GapNode(ObjectNode node) implements NightGap.Visitor<ObjectNode> {
        @Override
        public ObjectNode drifted(NightGap.Drifted drifted) {
            node.put("status", "drifted");
            node.put("days", drifted.duration().toSeconds() / 86_400.0);
            put(node, drifted.drift());
            put(node, drifted.covariance());
            node.put("more_than_uncertainty", drifted.isSignificant());

            return node;
        }

        @Override
        public ObjectNode setDownAgain(NightGap.SetDownAgain gap) {
            node.put("status", "set_down_anew");
            put(node, gap.by());

            return node;
        }

        @Override
        public ObjectNode notKnown(NightGap.NotKnown unknown) {
            node.put("status", "not_known");
            node.put("reason", unknown.reason());

            return node;
        }
    }
}
