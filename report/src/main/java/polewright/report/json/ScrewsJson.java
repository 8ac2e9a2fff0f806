package polewright.report.json;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.ScrewFinding;
import polewright.alignment.fix.ScrewGains;
import polewright.alignment.fix.ScrewSenses;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.session.NightState;

/** What was learned about the screws, tonight and on earlier nights, as JSON. */
final class ScrewsJson {
    private ScrewsJson() {}

    static ObjectNode of(NightState night) {
        AxisState state = night.fix().state();
        ScrewGains gains = state.gains();
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        Rig rig = night.fix().rig();
        ScrewSenses senses = night.fix().senses();
        node.put("azimuth_clockwise", word(rig.azimuthScrew()));
        node.put("azimuth_clockwise_probability", senses.azimuth());
        node.put("altitude_clockwise", word(rig.altitudeScrew()));
        node.put("altitude_clockwise_probability", senses.altitude());
        node.put("azimuth_play_turns", rig.azimuthScrew().backlashTurns());
        node.put("altitude_play_turns", rig.altitudeScrew().backlashTurns());
        node.put("azimuth_factor", gains.azimuthFactor());
        node.put("azimuth_factor_sigma", gains.azimuthSigma());
        node.put("altitude_factor", gains.altitudeFactor());
        node.put("altitude_factor_sigma", gains.altitudeSigma());
        node.put("azimuth_into_altitude", gains.azimuthIntoAltitude());
        node.put("altitude_into_azimuth", gains.altitudeIntoAzimuth());
        for (ScrewFinding finding : ScrewFinding.of(state)) {
            if (finding instanceof ScrewFinding.LeaningBase leaning) {
                node.put("base_leans_right_deg", leaning.toTheRight().degrees());
                node.put("base_leans_right_sigma_deg", leaning.sigma().degrees());
            } else if (finding instanceof ScrewFinding.CrookedHinge crooked) {
                node.put("hinge_out_of_square_right_deg", crooked.toTheRight().degrees());
                node.put("hinge_out_of_square_right_sigma_deg", crooked.sigma().degrees());
            } else {
                throw new IllegalStateException("no JSON for " + finding);
            }
        }
        night.begun().rig().experience().ifPresent(learned -> node.set("earlier_nights", earlier(learned)));
        return node;
    }

    private static String word(Screw screw) {
        return screw.clockwise().name().toLowerCase(Locale.ROOT);
    }

    private static ObjectNode earlier(Experience learned) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("nights", learned.nights());
        node.put("azimuth_factor", learned.azimuthFactor());
        node.put("azimuth_factor_sigma", learned.azimuthSigma());
        node.put("altitude_factor", learned.altitudeFactor());
        node.put("altitude_factor_sigma", learned.altitudeSigma());
        node.put("clampings", learned.clampings());
        node.put("clamp_east_arcmin", learned.clampShift().east().arcminutes());
        node.put("clamp_up_arcmin", learned.clampShift().up().arcminutes());
        node.put("clamp_sigma_arcmin", learned.clampSigma().arcminutes());
        return node;
    }
}
