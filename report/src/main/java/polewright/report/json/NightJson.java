package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.AdvisedStar;
import polewright.alignment.advice.RankedSighting;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.advice.SkyMeanwhile;
import polewright.alignment.fix.Agreement;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Fix;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.session.DarknessWait;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.event.Skip;

/** Fix and advice as JSON. */
public final class NightJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private NightJson() {}

    /** Fix and advice after one event, as printed by {@code replay} and the event commands. */
    public static ObjectNode afterEvent(LoggedEvent event, NightState night) {
        ObjectNode node = NODES.objectNode();
        node.put("seq", event.seq());
        node.put("at", event.at().toString());
        putOffset(node, night);
        Optional<Agreement> own = night.fix().agreement(event.seq());
        node.put("contradictory", own.map(Agreement::contradictory).orElse(false));
        own.flatMap(Agreement::likelyCause).ifPresent(cause -> node.put("likely_cause", cause));
        putStatus(node, night.fix());
        node.set("explanations", ExplanationsJson.of(night.fix()));
        node.set("screws_learned", ScrewsJson.of(night));
        ArrayNode setAside = node.putArray("set_aside");
        night.fix().agreements().stream().filter(Agreement::contradictory).forEach(a -> setAside.add(setAside(a)));
        putSkipped(node, night);
        node.set("allowance", ZoneJson.of(night.allowance()));
        node.set("advice", advice(night));
        return node;
    }

    /**
     * The sightings that the observer could not take and that are still left out of the advice; no key if there are
     * none.
     */
    private static void putSkipped(ObjectNode node, NightState night) {
        List<LoggedEvent> skips = night.skipped().stillExcluding(night.now());
        if (skips.isEmpty()) {
            return;
        }
        ArrayNode skipped = node.putArray("skipped");
        for (LoggedEvent logged : skips) {
            Skip skip = ((NightEvent.SightingSkipped) logged.event()).skip();
            ObjectNode entry = skipped.addObject();
            entry.put("seq", logged.seq());
            entry.put("sighting", word(skip.sighting()));
            entry.put("because", word(skip.because()));
            skip.star().ifPresent(star -> entry.put("star", star.label()));
            skip.optic().ifPresent(optic -> entry.put("optic", optic));
        }
    }

    /** The whole fix. */
    public static ObjectNode fix(NightState night) {
        ObjectNode node = NODES.objectNode();
        Fix fix = night.fix();
        AxisState state = fix.state();
        putStatus(node, fix);
        node.set("explanations", ExplanationsJson.of(fix));
        putOffset(node, night);
        node.put("azimuth_deg", state.axis().azimuth().degrees());
        node.put("altitude_deg", state.axis().altitude().degrees());
        node.put("azimuth_error_arcmin", state.axis().azimuthError(state.site()).arcminutes());
        node.put(
                "altitude_error_arcmin",
                state.axis().altitudeError(state.site()).arcminutes());
        node.put("probability_good_enough", night.advice().probabilityNow());
        node.put("clamped", night.clamped());
        node.set("screws", ScrewsJson.of(night));
        ArrayNode sightings = node.putArray("sightings");
        fix.agreements().forEach(a -> sightings.add(agreement(a)));
        return node;
    }

    /** What to do next; if that is to wait, until when and what for. */
    public static ObjectNode advice(NightState night) {
        ObjectNode node = advice(night.advice());
        DarknessWait.of(night).ifPresent(until -> {
            node.put("until", until.sunDown().toString());
            until.starsShow().ifPresent(show -> node.put("stars_show_at", show.toString()));
            if (until.next() instanceof Advice.TakeSighting take) {
                node.put("next_sighting", word(take.kind()));
            }
        });
        return node;
    }

    /** The same without what depends on the time. */
    public static ObjectNode advice(Advice advice) {
        ObjectNode node = NODES.objectNode();
        node.put("probability_good_enough", advice.probabilityNow());
        return advice.accept(new AdviceNode(node));
    }

    /** The possible sightings, best first. */
    public static ArrayNode ranking(List<RankedSighting> ranking) {
        ArrayNode nodes = NODES.arrayNode();
        for (RankedSighting ranked : ranking) {
            ObjectNode node = nodes.addObject();
            node.put("sighting", word(ranked.kind()));
            if (!ranked.watch().isZero()) {
                node.put("watch_minutes", ranked.watch().toMinutes());
            }
            ranked.star().ifPresent(s -> node.set("star", star(s)));
            node.put("minutes", ranked.minutes());
            node.put("probability_after", ranked.probabilityAfter());
        }
        return nodes;
    }

    private static ObjectNode meanwhile(SkyMeanwhile sky) {
        ObjectNode node = NODES.objectNode();
        node.put("screw", word(sky.screw()));
        node.put("optic", sky.optic());
        node.put("pole_star", sky.isPoleStar());
        node.put("fields", sky.fields());
        node.put("toward_clock", sky.toward().hours());
        return node;
    }

    private static String word(Enum<?> word) {
        return word.name().toLowerCase(java.util.Locale.ROOT);
    }

    private static void putOffset(ObjectNode node, NightState night) {
        AxisOffset offset = night.fix().state().offset();
        OffsetCovariance covariance = night.fix().state().offsetCovariance();
        node.put("east_arcmin", offset.east().arcminutes());
        node.put("up_arcmin", offset.up().arcminutes());
        ArrayNode rows = node.putArray("cov_arcmin2");
        rows.addArray().add(covariance.eastEastArcmin2()).add(covariance.eastUpArcmin2());
        rows.addArray().add(covariance.eastUpArcmin2()).add(covariance.upUpArcmin2());
    }

    private static String status(Fix fix) {
        if (fix instanceof Fix.Solved) {
            return "solved";
        }
        return fix instanceof Fix.Dubious ? "dubious" : "underdetermined";
    }

    private static void putStatus(ObjectNode node, Fix fix) {
        node.put("status", status(fix));
        if (fix instanceof Fix.Dubious dubious) {
            node.put("reason", dubious.reason());
        } else if (fix instanceof Fix.Underdetermined under) {
            node.put("reason", under.missing());
        }
        node.put("scatter", fix.scatter());
    }

    private static ObjectNode setAside(Agreement agreement) {
        ObjectNode node = NODES.objectNode();
        node.put("seq", agreement.seq());
        node.put("kind", agreement.kind());
        node.put("accused", agreement.accused());
        agreement.likelyCause().ifPresent(cause -> node.put("likely_cause", cause));
        return node;
    }

    private static ObjectNode agreement(Agreement agreement) {
        ObjectNode node = NODES.objectNode();
        node.put("seq", agreement.seq());
        node.put("kind", agreement.kind());
        node.put("chi_squared", agreement.squaredInnovation());
        node.put("degrees_of_freedom", agreement.figures());
        node.put("contradictory", agreement.contradictory());
        node.put("accused", agreement.accused());
        agreement.likelyCause().ifPresent(cause -> node.put("likely_cause", cause));
        return node;
    }

    private static ObjectNode star(AdvisedStar star) {
        ObjectNode node = NODES.objectNode();
        node.put("name", star.name());
        node.put("az_deg", star.direction().azimuth().degrees());
        node.put("alt_apparent_deg", star.direction().altitude().degrees());
        node.put("hour_angle_deg", star.place().hourAngle().degrees());
        node.put("dec_of_date_deg", star.place().declination().degrees());
        return node;
    }

    private record AdviceNode(ObjectNode node) implements Advice.Visitor<ObjectNode> {
        @Override
        public ObjectNode turnScrews(Advice.TurnScrews turn) {
            node.put("do", "turn");
            for (ScrewTurn t : turn.turns()) {
                node.put(
                        t.screw() == ScrewTurn.Which.AZIMUTH ? "azimuth_turns_clockwise" : "altitude_turns_clockwise",
                        t.clockwiseTurns());
            }
            turn.turns().stream()
                    .filter(t -> t.backTurns() != 0)
                    .forEach(t -> node.put(
                            t.screw() == ScrewTurn.Which.AZIMUTH
                                    ? "azimuth_back_turns_clockwise"
                                    : "altitude_back_turns_clockwise",
                            t.backTurns()));
            ArrayNode order = node.putArray("order");
            turn.turns().forEach(t -> order.add(word(t.screw())));
            ArrayNode tests = node.putArray("tests");
            turn.tests().stream().sorted().forEach(screw -> tests.add(word(screw)));
            node.put("loosen_first", turn.loosenFirst());
            node.put("probability_after", turn.probabilityAfter());
            ArrayNode sky = node.putArray("sky_meanwhile");
            turn.sky().forEach(s -> sky.add(meanwhile(s)));

            return node;
        }

        @Override
        public ObjectNode moveByHand(Advice.MoveByHand move) {
            node.put("do", "move");
            node.put("azimuth_right_deg", move.azimuth().degrees());
            node.put("altitude_up_deg", move.altitude().degrees());

            return node;
        }

        @Override
        public ObjectNode takeSighting(Advice.TakeSighting take) {
            node.put("do", "sight");
            node.put("sighting", word(take.kind()));
            if (!take.watch().isZero()) {
                node.put("watch_minutes", take.watch().toMinutes());
            }
            node.put("reason", take.reason());
            take.star().ifPresent(s -> node.set("star", star(s)));

            return node;
        }

        @Override
        public ObjectNode waitForDark(Advice.WaitForDark advice) {
            node.put("do", "wait");

            return node;
        }

        @Override
        public ObjectNode waitForSky(Advice.WaitForSky wait) {
            node.put("do", "wait_for_sky");
            wait.lookAgain().ifPresent(at -> node.put("look_again_at", at.toString()));

            return node;
        }

        @Override
        public ObjectNode clamp(Advice.Clamp advice) {
            node.put("do", "clamp");

            return node;
        }

        @Override
        public ObjectNode stop(Advice.Stop advice) {
            node.put("do", "stop");

            return node;
        }
    }
}
