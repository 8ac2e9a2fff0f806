package polewright.app.scene;

import java.util.List;
import polewright.app.text.LegWords;
import polewright.app.text.NextWords;
import polewright.axis.advice.Advice;
import polewright.axis.advice.ScrewTurn;
import polewright.axis.drawing.Palette;
import polewright.axis.drawing.ScrewToTurn;
import polewright.axis.drawing.WedgeDrawing;
import polewright.axis.rig.Rig;
import polewright.night.NightState;
import polewright.sky.place.Site;

/** The wedge with the screws that are to be turned now, or with what comes before turning. */
public final class WedgeScene {
    private WedgeScene() {}

    /** A complete SVG document, also fit to be put inside a page. */
    public static String svg(NightState night, Palette palette) {
        Rig rig = night.begun().rig();
        List<ScrewToTurn> turns = night.advice() instanceof Advice.TurnScrews advised
                ? advised.turns().stream()
                        .map(turn -> LegWords.toTurn(
                                turn.screw() == ScrewTurn.Which.AZIMUTH ? rig.azimuthScrew() : rig.altitudeScrew(),
                                turn.clockwiseTurns(),
                                turn.backTurns()))
                        .toList()
                : List.of();
        Site site = night.begun().site();
        return NextWords.beforeTurning(night.advice())
                .map(first -> WedgeDrawing.notYet(rig.kind(), site, first, palette))
                .orElseGet(() -> WedgeDrawing.svg(rig.kind(), site, turns, palette));
    }
}
