package polewright.session;

import java.util.ArrayList;
import java.util.List;
import polewright.mount.pointing.CentredStar;
import polewright.mount.pointing.CentringCheck;
import polewright.mount.pointing.CheckedCentrings;
import polewright.mount.pointing.PointingFit;
import polewright.mount.pointing.PointingOutcome;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.atlas.NamedStars;
import polewright.sky.body.FixedStar;

/**
 * The pointing model from the stars centred since the axis last moved.
 *
 * @param seqs the numbers of their events, in order
 * @param stars as entered
 * @param checked which of them to use
 * @param outcome the model fitted to those
 */
public record NightPointing(
        List<Long> seqs, List<CentredStar> stars, CheckedCentrings checked, PointingOutcome outcome) {
    // Stars that may be centred by mistake instead of another.
    private static final double BRIGHT = 4;

    public NightPointing {
        seqs = List.copyOf(seqs);
        stars = List.copyOf(stars);
    }

    public static NightPointing of(NightState night) {
        List<Long> seqs = new ArrayList<>();
        List<CentredStar> stars = new ArrayList<>();
        for (LoggedEvent logged : night.standing()) {
            if (logged.event() instanceof NightEvent.MountMove) {
                seqs.clear();
                stars.clear();
            } else if (logged.event() instanceof NightEvent.StarCentred star) {
                seqs.add(logged.seq());
                stars.add(star.centred());
            }
        }
        NightEvent.Begun begun = night.begun();
        List<FixedStar> named = NamedStars.bundled().all().stream()
                .filter(star -> star.magnitude() <= BRIGHT && !star.names().isEmpty())
                .map(star -> new FixedStar(star.label(), star.place()))
                .toList();
        CheckedCentrings checked = CentringCheck.of(begun.rig().kind(), begun.site(), begun.weather(), stars, named);
        PointingOutcome outcome = PointingFit.of(
                begun.rig().kind(),
                begun.site(),
                checked.believed().stream()
                        .map(star -> star.reduced(begun.site(), begun.weather()))
                        .toList());
        return new NightPointing(seqs, stars, checked, outcome);
    }
}
