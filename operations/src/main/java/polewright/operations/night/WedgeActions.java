package polewright.operations.night;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.ScrewTurn;
import polewright.mount.rig.HandTurns;
import polewright.operations.OperationFailed;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Whole;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.action.LooksMistaken;
import polewright.operations.input.TurnsInput;
import polewright.session.NightState;
import polewright.session.event.Correction;
import polewright.session.event.NightEvent;

/** What is done at the wedge, now or earlier: a night may be entered when hands are warm again. */
public final class WedgeActions {
    private static final int MOST_LIKELY_TURNS = 20;

    public static final Argument<HandTurns> AZIMUTH = Argument.option(
            "azimuth",
            "Azimuth screw",
            "1 1/4, or 3/8 ccw, or 2 ccw then 1/2 cw",
            new Words<>("TURNS", new TurnsInput()::convert));
    public static final Argument<HandTurns> ALTITUDE =
            Argument.option("altitude", "Altitude screw", "", new Words<>("TURNS", new TurnsInput()::convert));
    public static final Argument<Long> INSTEAD_OF =
            Argument.option("instead-of", "Replaces turn number", "Only to correct a wrong entry.", new Whole("SEQ"));
    public static final Argument<Long> UNLOGGED_AFTER = Argument.option(
            "unlogged-after",
            "After event number",
            "The last event before screws were turned by an unknown amount and not logged.",
            new Whole("SEQ"));
    public static final Argument<ScrewTurn.Which> SCREW = Argument.option(
            "screw",
            "Which screw",
            "Of turns that were not logged.",
            Choice.of(
                    ScrewTurn.Which.class,
                    "SCREW",
                    "one or both",
                    Map.of(
                            ScrewTurn.Which.AZIMUTH, "azimuth",
                            ScrewTurn.Which.ALTITUDE, "altitude")));

    public static final Action TURN = Action.of(
                    "turn",
                    List.of("turn"),
                    "Screws were turned",
                    "Clockwise as you look at the head of the screw.",
                    WedgeActions::turned)
            .taking(AZIMUTH, ALTITUDE, INSTEAD_OF, UNLOGGED_AFTER, SCREW)
            .at(Action.Timing.DONE)
            .askingIfMistaken()
            .forExample("", "--azimuth \"1 1/4\" --altitude \"3/8 ccw\"")
            .forExample("", "--altitude \"2 ccw then 1/2 cw\"")
            .forExample("", "--instead-of 7 --azimuth \"1 3/4\"")
            .forExample("", "--unlogged-after 6 --screw altitude");
    public static final Action CLAMP = Action.of(
                    "clamp",
                    List.of("clamp"),
                    "Clamps are tight",
                    "Gently, a little on each in turn.",
                    (entries, context) -> {
                        if (context.before().clamped()) {
                            throw new OperationFailed(
                                    "the clamps are already tight. Loosen them first with {do:unclamp}.");
                        }
                        return List.of(new NightEvent.Clamped());
                    })
            .at(Action.Timing.DONE);
    public static final Action UNCLAMP = Action.of(
                    "unclamp", List.of("unclamp"), "Clamps are loose", "", (entries, context) -> {
                        if (!context.before().clamped()) {
                            throw new OperationFailed("the clamps are already loose. Tighten them with {do:clamp}.");
                        }
                        return List.of(new NightEvent.Unclamped());
                    })
            .at(Action.Timing.DONE);
    public static final Action KNOCK = Action.of(
                    "knock",
                    List.of("knock"),
                    "The mount was knocked or moved",
                    "Earlier sightings then count for little.",
                    (entries, context) -> List.of(new NightEvent.Knocked()))
            .at(Action.Timing.DONE);

    private WedgeActions() {}

    private static List<NightEvent> turned(Entries entries, ActionContext context) {
        HandTurns azimuth = entries.given(AZIMUTH).orElse(HandTurns.NONE);
        HandTurns altitude = entries.given(ALTITUDE).orElse(HandTurns.NONE);
        Optional<Long> unloggedAfter = entries.given(UNLOGGED_AFTER);
        Optional<ScrewTurn.Which> screw = entries.given(SCREW);
        if (unloggedAfter.isPresent()) {
            if (entries.given(INSTEAD_OF).isPresent() || !azimuth.isNone() || !altitude.isNone()) {
                throw new OperationFailed("{unlogged-after} is for turns of unknown size. Leave out the turns.");
            }
            return List.of(new Correction.TurnNotLogged(
                    unloggedAfter.get(),
                    screw.filter(ScrewTurn.Which.ALTITUDE::equals).isEmpty(),
                    screw.filter(ScrewTurn.Which.AZIMUTH::equals).isEmpty()));
        }
        if (screw.isPresent()) {
            throw new OperationFailed("{screw} needs {unlogged-after}. Give both.");
        }
        NightEvent.ScrewsTurned turned =
                new NightEvent.ScrewsTurned(azimuth.net(), altitude.net(), azimuth.back(), altitude.back());
        if (!context.isConfirmed()) {
            checkForSlip("azimuth", azimuth, advised(context.before(), ScrewTurn.Which.AZIMUTH));
            checkForSlip("altitude", altitude, advised(context.before(), ScrewTurn.Which.ALTITUDE));
        }
        return List.of(entries.given(INSTEAD_OF)
                .<NightEvent>map(wrong -> new Correction.TurnCorrected(wrong, turned))
                .orElse(turned));
    }

    /** Few wedges have this many turns: a decimal point may be missing, unless this many were advised. */
    private static void checkForSlip(String screw, HandTurns turns, double advised) {
        double most = Math.max(Math.abs(turns.net()), Math.abs(turns.outward()));
        if (most > Math.max(MOST_LIKELY_TURNS, 2 * advised)) {
            throw new LooksMistaken(new LooksMistaken.Doubt.ManyTurns(screw, most));
        }
    }

    private static double advised(NightState before, ScrewTurn.Which screw) {
        return before.advice() instanceof Advice.TurnScrews order
                ? order.turns().stream()
                        .filter(turn -> turn.screw() == screw)
                        .mapToDouble(turn -> Math.abs(turn.clockwiseTurns()))
                        .max()
                        .orElse(0)
                : 0;
    }
}
