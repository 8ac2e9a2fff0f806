package polewright.report.scene;

import java.util.ArrayList;
import java.util.List;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.fix.AxisState;
import polewright.drawing.Palette;
import polewright.drawing.mount.ScrewToTurn;
import polewright.drawing.mount.WedgeDrawing;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.report.text.LegWords;
import polewright.report.text.NextWords;
import polewright.report.text.WatchWords;
import polewright.session.NightState;
import polewright.sky.place.Site;

/** Prepares the picture of the wedge with the screws to be turned now, or with what comes before turning. */
public final class WedgeScene {
    private WedgeScene() {}

    /** A complete SVG document that can also be embedded in a page. */
    public static String svg(NightState night, Palette palette) {
        Rig rig = night.fix().rig();
        List<ScrewToTurn> turns = night.advice() instanceof Advice.TurnScrews advised
                ? advised.turns().stream()
                        .map(turn -> LegWords.toTurn(
                                turn.screw() == ScrewTurn.Which.AZIMUTH ? rig.azimuthScrew() : rig.altitudeScrew(),
                                turn.clockwiseTurns(),
                                turn.backTurns(),
                                advised.tests().contains(turn.screw())))
                        .toList()
                : List.of();
        Site site = night.begun().site();
        return NextWords.beforeTurning(night.advice())
                .map(first -> WedgeDrawing.notYet(rig.kind(), site, first, palette))
                .orElseGet(() -> WedgeDrawing.svg(rig.kind(), site, turns, palette));
    }

    /**
     * The wedge with the remaining turns while frames follow its screws.
     *
     * @param remaining turns, clockwise positive
     */
    public static String remaining(NightState night, AxisState.Turns remaining, Palette palette) {
        Rig rig = night.fix().rig();
        List<ScrewToTurn> turns = new ArrayList<>();
        addRemaining(turns, rig.altitudeScrew(), remaining.altitude());
        addRemaining(turns, rig.azimuthScrew(), remaining.azimuth());
        return WedgeDrawing.svg(rig.kind(), night.begun().site(), turns, palette);
    }

    private static void addRemaining(List<ScrewToTurn> turns, Screw screw, double remaining) {
        double toTurn = WatchWords.rounded(remaining);
        if (toTurn != 0) {
            turns.add(LegWords.toTurn(screw, toTurn, 0, false));
        }
    }
}
