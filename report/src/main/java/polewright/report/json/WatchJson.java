package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import polewright.alignment.advice.FollowedScrews;
import polewright.alignment.camera.Drive;
import polewright.mount.AxisOffset;
import polewright.operations.camera.PlacedFrame;
import polewright.operations.watch.WatchStep;
import polewright.report.text.FrameWords;

/** The result of each watched frame as JSON: one value per frame. */
public final class WatchJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private WatchJson() {}

    /** A file that was skipped. */
    public static ObjectNode note(String line) {
        return NODES.objectNode().put("note", line);
    }

    /** A frame that could not be solved. */
    public static ObjectNode refused(String frame, String line) {
        return NODES.objectNode().put("frame", frame).put("error", line);
    }

    /**
     * A solved frame.
     *
     * @param told state of the drive, if stated
     */
    public static ObjectNode of(PlacedFrame frame, WatchStep step, Drive told) {
        ObjectNode node = NODES.objectNode();
        node.put("frame", frame.name());
        frame.at().ifPresent(at -> node.put("at", at.toString()));
        node.put("ra_icrs_deg", frame.match().plate().rightAscension().degrees());
        node.put("dec_icrs_deg", frame.match().plate().declination().degrees());
        node.put("stars_matched", frame.match().starsMatched());
        return step.accept(new Result(node, told));
    }

    private static ObjectNode screws(WatchStep.ScrewsFollowed followed) {
        ObjectNode node = NODES.objectNode();
        AxisOffset offset = followed.offset();
        node.put("east_arcmin", offset.east().arcminutes());
        node.put("up_arcmin", offset.up().arcminutes());
        node.put("azimuth_moved_arcmin", followed.soFar().azimuthMoved().arcminutes());
        node.put("altitude_moved_arcmin", followed.soFar().altitudeMoved().arcminutes());
        node.put("east_moved_arcmin", followed.moved().east().arcminutes());
        node.put("up_moved_arcmin", followed.moved().up().arcminutes());
        node.put("azimuth_turns_remaining_clockwise", followed.remaining().azimuth());
        node.put("altitude_turns_remaining_clockwise", followed.remaining().altitude());
        node.put("azimuth_turns_ordered_clockwise", followed.ordered().azimuth());
        node.put("altitude_turns_ordered_clockwise", followed.ordered().altitude());
        followed.azimuthWentWrong().ifPresent(way -> node.put("azimuth_went_wrong", word(way)));
        followed.altitudeWentWrong().ifPresent(way -> node.put("altitude_went_wrong", word(way)));
        node.put("screw_directions_assumed", followed.isSenseAssumed());
        node.put("good_enough", followed.goodEnough());
        ArrayNode findings = node.putArray("warnings");
        followed.soFar().findings().forEach(finding -> findings.add(FrameWords.of(finding)));
        return node;
    }

    private static String word(FollowedScrews.WrongWay way) {
        return way.name().toLowerCase(Locale.ROOT);
    }

    private record Result(ObjectNode node, Drive told) implements WatchStep.Visitor<ObjectNode> {
        @Override
        public ObjectNode placed(WatchStep.Placed placed) {
            node.put("places", placed.places());

            return node;
        }

        @Override
        public ObjectNode startedAfresh(WatchStep.StartedAfresh afresh) {
            node.put("places", 1).put("started_afresh", true);
            afresh.slew().ifPresent(far -> node.put("slew_deg", far.degrees()));

            return node;
        }

        @Override
        public ObjectNode axisFound(WatchStep.AxisFound found) {
            node.set("axis", FramesJson.of(found.axis(), told));

            return node;
        }

        @Override
        public ObjectNode axisSharpened(WatchStep.AxisSharpened sharper) {
            node.set("axis", FramesJson.of(sharper.axis(), told));

            return node;
        }

        @Override
        public ObjectNode screwsFollowed(WatchStep.ScrewsFollowed followed) {
            node.set("screws", screws(followed));

            return node;
        }
    }
}
