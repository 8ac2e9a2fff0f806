package polewright.report.json;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import polewright.image.match.MatchedFrame;
import polewright.image.match.Plate;
import polewright.operations.camera.PlacedFrame;
import polewright.sky.place.RefractedDirection;

/** The attitude of a frame as JSON. */
public final class AttitudeJson {
    private AttitudeJson() {}

    /**
     * One frame.
     *
     * @param stood apparent direction of its centre, if site and time are known
     */
    public static ObjectNode of(PlacedFrame placed, Optional<RefractedDirection> stood, List<String> notes) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        MatchedFrame match = placed.match();
        Plate plate = match.plate();
        node.put("frame", placed.name());
        placed.at().ifPresent(at -> node.put("at", at.toString()));
        node.put("ra_icrs_deg", plate.rightAscension().degrees());
        node.put("dec_icrs_deg", plate.declination().degrees());
        node.put("roll_deg", placed.rollAsDrawn().degrees());
        node.put("scale_arcsec_px", plate.scale().arcseconds());
        node.put("mirrored", placed.mirroredAsDrawn());
        node.put("field_width_deg", placed.fieldWidth().degrees());
        node.put("field_height_deg", placed.fieldHeight().degrees());
        node.put("stars_found", match.starsFound());
        node.put("stars_matched", match.starsMatched());
        node.put("rms_arcsec", match.rmsArcsec());
        node.put("sigma_arcsec", match.covariance().centreSigma().arcseconds());
        node.put("log_odds", match.logOdds());
        stood.ifPresent(direction -> {
            node.put("az_deg", direction.azimuth().degrees());
            node.put("alt_apparent_deg", direction.altitude().degrees());
        });
        node.put("seconds", placed.took().toMillis() / 1000.0);
        notes.forEach(node.putArray("notes")::add);
        return node;
    }
}
