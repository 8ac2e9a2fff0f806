package polewright.report.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import polewright.alignment.sighting.CentredStars;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.PointingModel;
import polewright.mount.pointing.PointingOutcome;
import polewright.mount.pointing.PointingTerm;
import polewright.mount.pointing.StarResidual;
import polewright.report.text.PointingWords;
import polewright.session.NightPointing;
import polewright.session.NightState;

/** A mount's pointing errors from centred stars as JSON. */
public final class PointingJson {
    private PointingJson() {}

    public static ObjectNode of(NightState night, NightPointing pointing) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("site", night.begun().siteName());
        node.put("centred", pointing.stars().size());
        node.put("believed", pointing.checked().believed().size());
        PointingWords.doubts(pointing).forEach(node.putArray("doubts")::add);
        if (pointing.outcome() instanceof PointingOutcome.Fitted fitted) {
            fitted(node, pointing, fitted.model());
        }
        return node;
    }

    private static void fitted(ObjectNode node, NightPointing pointing, PointingModel model) {
        ArrayNode terms = node.putArray("terms");
        model.termEstimates()
                .forEach(standing -> terms.addObject()
                        .put("term", word(standing.term()))
                        .put("arcmin", standing.value().arcminutes())
                        .put("sigma_arcmin", standing.sigma().arcminutes())
                        .put("supported", standing.isSupported()));
        ArrayNode together = node.putArray("only_together");
        model.inseparable().forEach(group -> {
            ArrayNode names = together.addArray();
            group.terms().forEach(term -> names.add(word(term)));
        });
        if (pointing.checked().believed().size() >= CentredStars.FEWEST) {
            node.putObject("axis")
                    .put("east_arcmin", model.axisOffset().east().arcminutes())
                    .put("up_arcmin", model.axisOffset().up().arcminutes())
                    .put("sigma_east_arcmin", model.axisCovariance().sigmaEast().arcminutes())
                    .put("sigma_up_arcmin", model.axisCovariance().sigmaUp().arcminutes());
        }
        ArrayNode left = node.putArray("left");
        List<CentredStar> believed = pointing.checked().believed();
        List<StarResidual> residuals = model.residuals();
        for (int i = 0; i < residuals.size(); i++) {
            StarResidual residual = residuals.get(i);
            left.addObject()
                    .put("seq", pointing.seqs().get(pointing.stars().indexOf(believed.get(i))))
                    .put("star", residual.centring().star())
                    .put("west_arcmin", residual.offset().west().arcminutes())
                    .put("north_arcmin", residual.offset().north().arcminutes())
                    .put("left_out_arcmin", residual.crossValidated().distance().arcminutes());
        }
    }

    private static String word(PointingTerm term) {
        return term.name().toLowerCase(Locale.ROOT);
    }
}
