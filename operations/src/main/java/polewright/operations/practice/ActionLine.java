package polewright.operations.practice;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import polewright.alignment.advice.ScrewTurn;
import polewright.mount.rig.HandTurns;
import polewright.session.jsonl.RigText;
import polewright.simulation.practice.PracticeAction;
import polewright.simulation.practice.Scenario;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Scenario and actions as lines of JSON. */
public final class ActionLine {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private ActionLine() {}

    public static String of(Scenario scenario, Optional<String> key) {
        ObjectNode node = MAPPER.createObjectNode();
        node.put("site", scenario.siteName());
        node.put("latitude_deg", scenario.site().latitude().degrees());
        node.put("longitude_deg", scenario.site().longitude().degrees());
        node.put("height_m", scenario.site().heightMetres());
        node.put("from", scenario.from().toString());
        node.put("seed", scenario.seed());
        node.put("camera", scenario.hasCamera());
        node.put("rig", RigText.write(scenario.rig()));
        key.ifPresent(given -> node.put("key", given));
        return text(node);
    }

    public static Scenario scenario(String line) {
        JsonNode node = parsed(line);
        Site site = Site.ofDegrees(
                node.path("latitude_deg").asDouble(),
                node.path("longitude_deg").asDouble(),
                node.path("height_m").asDouble());
        String name = node.path("site").asText();
        Instant from = Instant.parse(node.path("from").asText());
        long seed = node.path("seed").asLong();
        var rig = RigText.read(node.path("rig").asText());
        return node.path("camera").asBoolean()
                ? Scenario.withCamera(name, site, rig, from, seed)
                : Scenario.byEye(name, site, rig, from, seed);
    }

    public static Optional<String> key(String line) {
        return Optional.ofNullable(parsed(line).get("key")).map(JsonNode::asText);
    }

    public static String of(PracticeAction action, Optional<String> key) {
        ObjectNode node = MAPPER.createObjectNode();
        action.accept(new Fields(node));
        key.ifPresent(given -> node.put("key", given));
        return text(node);
    }

    public static PracticeAction deed(String line) {
        JsonNode node = parsed(line);
        return switch (node.path("deed").asText()) {
            case "screw" ->
                new PracticeAction.TurnScrew(
                        ScrewTurn.Which.valueOf(node.path("screw").asText().toUpperCase(Locale.ROOT)),
                        new HandTurns(
                                node.path("turns").asDouble(), node.path("back").asDouble()));
            case "move" ->
                new PracticeAction.MoveByHand(
                        new Angle(node.path("right_rad").asDouble()),
                        new Angle(node.path("up_rad").asDouble()));
            case "clamp" -> new PracticeAction.Clamp();
            case "unclamp" -> new PracticeAction.Unclamp();
            case "rock" -> new PracticeAction.RockAndLook(node.path("optic").asText());
            case "compass" -> new PracticeAction.ReadCompass();
            case "scale" -> new PracticeAction.ReadScale();
            case "watch" ->
                new PracticeAction.WatchStar(
                        node.path("star").asText(),
                        Duration.ofSeconds(node.path("seconds").asLong()));
            case "frame" ->
                new PracticeAction.TakeFrame(new Angle(node.path("turned_rad").asDouble()));
            case "wait" ->
                new PracticeAction.Wait(Duration.ofSeconds(node.path("seconds").asLong()));
            default ->
                throw new InputRefused(
                        "the practice contains an unknown action", "begin another with {do:practice-begin}");
        };
    }

    private static JsonNode parsed(String line) {
        try {
            return MAPPER.readTree(line);
        } catch (JsonProcessingException e) {
            throw new InputRefused("a line of the practice cannot be read", "begin another with {do:practice-begin}");
        }
    }

    private static String text(ObjectNode node) {
        try {
            return MAPPER.writeValueAsString(node);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of plain values did not print", e);
        }
    }

    private record Fields(ObjectNode node) implements PracticeAction.Visitor<ObjectNode> {
        @Override
        public ObjectNode turnScrew(PracticeAction.TurnScrew turn) {
            node.put("deed", "screw");
            node.put("screw", turn.screw().name().toLowerCase(Locale.ROOT));
            node.put("turns", turn.turns().net());
            node.put("back", turn.turns().back());

            return node;
        }

        @Override
        public ObjectNode moveByHand(PracticeAction.MoveByHand move) {
            node.put("deed", "move");
            node.put("right_rad", move.azimuth().radians());
            node.put("up_rad", move.altitude().radians());

            return node;
        }

        @Override
        public ObjectNode clamp(PracticeAction.Clamp action) {
            node.put("deed", "clamp");

            return node;
        }

        @Override
        public ObjectNode unclamp(PracticeAction.Unclamp action) {
            node.put("deed", "unclamp");

            return node;
        }

        @Override
        public ObjectNode rockAndLook(PracticeAction.RockAndLook look) {
            node.put("deed", "rock");
            node.put("optic", look.optic());

            return node;
        }

        @Override
        public ObjectNode readCompass(PracticeAction.ReadCompass action) {
            node.put("deed", "compass");

            return node;
        }

        @Override
        public ObjectNode readScale(PracticeAction.ReadScale action) {
            node.put("deed", "scale");

            return node;
        }

        @Override
        public ObjectNode watchStar(PracticeAction.WatchStar watch) {
            node.put("deed", "watch");
            node.put("star", watch.star());
            node.put("seconds", watch.length().toSeconds());

            return node;
        }

        @Override
        public ObjectNode takeFrame(PracticeAction.TakeFrame frame) {
            node.put("deed", "frame");
            node.put("turned_rad", frame.turned().radians());

            return node;
        }

        @Override
        public ObjectNode waiting(PracticeAction.Wait wait) {
            node.put("deed", "wait");
            node.put("seconds", wait.length().toSeconds());

            return node;
        }
    }
}
