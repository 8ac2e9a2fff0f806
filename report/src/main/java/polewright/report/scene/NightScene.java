package polewright.report.scene;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.PossibleAxes;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Explanation;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.ScrewSenses;
import polewright.drawing.zone.ZoneScene;
import polewright.mount.AxisOffset;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;

/** Prepares a night for the picture of its zone. */
public final class NightScene {
    // More would hide each other.
    private static final int MOST_PLACES = 12;

    private NightScene() {}

    public static ZoneScene of(NightState night) {
        ZoneScene scene = ZoneScene.of(night.allowance(), night.begun().site().isNorthern())
                .withPath(path(night));
        if (night.fix().isDetermined()) {
            scene = withNow(scene, night.fix()).withPossible(possible(night.fix()));
        }
        return night.advice() instanceof Advice.TurnScrews turns ? scene.withGoal(turns.offsetAfter()) : scene;
    }

    /** The region covers all the positions drawn. */
    private static ZoneScene withNow(ZoneScene scene, Fix fix) {
        if (fix.otherPlaces().isEmpty()) {
            return scene.withNow(fix.state().offset(), fix.state().offsetCovariance());
        }
        PossibleAxes places = PossibleAxes.of(fix);
        return scene.withNow(places.mean(), places.combinedCovariance());
    }

    /**
     * The positions from contradictory explanations, or from screws that may have gone either way; nothing can be drawn
     * if the site was entered wrongly.
     */
    private static List<AxisOffset> possible(Fix fix) {
        if (fix.isInDispute()) {
            return fix.explanations().stream()
                    .map(Explanation::state)
                    .filter(state -> state.site().equals(fix.state().site()))
                    .map(AxisState::offset)
                    .toList();
        }
        List<AxisOffset> others =
                fix.otherPlaces().stream().map(ScrewSenses.Otherwise::offset).toList();
        return others.isEmpty()
                ? others
                : Stream.concat(Stream.of(fix.state().offset()), others.stream())
                        .toList();
    }

    /** The position of the axis just before each move, from all that is known now. */
    private static List<ZoneScene.Place> path(NightState night) {
        List<LoggedEvent> events = night.standing();
        List<Integer> moves = new ArrayList<>();
        for (int i = 1; i < events.size(); i++) {
            boolean isSightedBefore = events.get(i - 1).event().asSighting().isPresent();
            if (isSightedBefore && events.get(i).event().movesAxisFar()) {
                moves.add(i);
            }
        }
        NightState.ModelCache models = new NightState.ModelCache();
        List<ZoneScene.Place> places = new ArrayList<>();
        for (int i : moves.subList(Math.max(0, moves.size() - MOST_PLACES), moves.size())) {
            NightState before =
                    NightState.of(events.subList(0, i), events.get(i).at(), models);
            if (before.fix().isDetermined()) {
                AxisState state = before.fix().state();
                places.add(new ZoneScene.Place(state.offset(), Optional.of(state.offsetCovariance())));
            }
        }
        return places;
    }
}
