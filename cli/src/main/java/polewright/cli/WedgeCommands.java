package polewright.cli;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.ScrewTurn;
import polewright.mount.rig.HandTurns;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.input.TurnsInput;
import polewright.operations.input.UtcInput;
import polewright.report.text.EventWords;
import polewright.report.text.Fractions;
import polewright.session.NightState;
import polewright.session.event.Correction;
import polewright.session.event.NightEvent;

/** Commands for actions at the wedge, other than sighting. */
final class WedgeCommands {
    private WedgeCommands() {}

    /** An action, now or earlier: a night may be entered when hands are warm again. */
    private abstract static class DoneCommand extends AppendingCommand {
        @Option(
                names = "--at",
                paramLabel = "TIME",
                converter = UtcInput.class,
                description = "When it was done, with time zone: 2026-11-25T20:00Z. Default: now.")
        private @Nullable Instant at;

        DoneCommand(Workbench workbench, String logged) {
            super(workbench, logged);
        }

        @Override
        final Optional<Instant> given() {
            return Optional.ofNullable(at);
        }

        @Override
        final Instant happened(Instant now) {
            return at == null ? now : at;
        }
    }

    @Command(
            name = "turn",
            description = "Log that wedge screws were turned, clockwise positive.",
            footer = {
                "",
                "For example:",
                "  polewright turn --azimuth \"1 1/4\" --altitude \"3/8 ccw\"",
                "  polewright turn --altitude \"2 ccw then 1/2 cw\"",
                "  polewright turn --instead-of 7 --azimuth \"1 3/4\"",
                "  polewright turn --unlogged-after 6 --screw altitude"
            })
    static final class Turn extends DoneCommand {
        @Option(
                names = "--azimuth",
                paramLabel = "TURNS",
                converter = TurnsInput.class,
                description =
                        "Turns of the azimuth screw: 1.25, \"3/8 ccw\"; past the mark and back: \"2 ccw then 1/2 cw\".")
        private HandTurns azimuth = HandTurns.NONE;

        @Option(
                names = "--altitude",
                paramLabel = "TURNS",
                converter = TurnsInput.class,
                description = "Turns of the altitude screw.")
        private HandTurns altitude = HandTurns.NONE;

        @Mixin
        private AsTypedOption asTyped;

        @Option(
                names = "--instead-of",
                paramLabel = "SEQ",
                description = "Replace turn SEQ, which was entered wrongly.")
        private @Nullable Long insteadOf;

        @Option(
                names = "--unlogged-after",
                paramLabel = "SEQ",
                description = "Screws were turned by an unknown amount after event SEQ, and not logged.")
        private @Nullable Long unloggedAfter;

        @Option(
                names = "--screw",
                paramLabel = "SCREW",
                description = "With --unlogged-after, if only one screw was turned: azimuth or altitude.")
        private @Nullable Screw screw;

        private static final int MOST_LIKELY_TURNS = 20;

        /** The two screws. */
        enum Screw {
            azimuth,
            altitude
        }

        Turn(Workbench workbench) {
            super(workbench, "screws turned");
        }

        @Override
        NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before) {
            if (unloggedAfter != null) {
                return unlogged(unloggedAfter);
            }
            if (screw != null) {
                throw new OperationFailed("--screw needs --unlogged-after. Give both.");
            }
            NightEvent.ScrewsTurned turned =
                    new NightEvent.ScrewsTurned(azimuth.net(), altitude.net(), azimuth.back(), altitude.back());
            if (!asTyped.isConfirmed()) {
                checkForSlip("azimuth", azimuth, advised(before, ScrewTurn.Which.AZIMUTH));
                checkForSlip("altitude", altitude, advised(before, ScrewTurn.Which.ALTITUDE));
            }
            return insteadOf == null ? turned : new Correction.TurnCorrected(insteadOf, turned);
        }

        /** Few wedges have this many turns: a decimal point may be missing, unless this many were advised. */
        private static void checkForSlip(String screw, HandTurns turns, double advised) {
            double most = Math.max(Math.abs(turns.net()), Math.abs(turns.outward()));
            if (most > Math.max(MOST_LIKELY_TURNS, 2 * advised)) {
                throw new ConfirmationNeeded(
                        Fractions.turns(most) + " of the " + screw + " screw is more than most wedges have",
                        "check the number");
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

        private NightEvent unlogged(long after) {
            if (insteadOf != null || !azimuth.isNone() || !altitude.isNone()) {
                throw new OperationFailed("--unlogged-after is for turns of unknown size. Leave out the turns.");
            }
            return new Correction.TurnNotLogged(after, screw != Screw.altitude, screw != Screw.azimuth);
        }

        @Override
        String logged() {
            if (unloggedAfter != null) {
                return "turned after #" + unloggedAfter;
            }
            return insteadOf == null ? super.logged() : "in place of turn #" + insteadOf;
        }
    }

    @Command(name = "clamp", description = "Log that the clamps were tightened.")
    static final class Clamp extends DoneCommand {
        Clamp(Workbench workbench) {
            super(workbench, "clamped");
        }

        @Override
        NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before) {
            if (before.clamped()) {
                throw new OperationFailed("the clamps are already tight. Loosen them first with polewright unclamp.");
            }
            return new NightEvent.Clamped();
        }
    }

    @Command(name = "unclamp", description = "Log that the clamps were loosened.")
    static final class Unclamp extends DoneCommand {
        Unclamp(Workbench workbench) {
            super(workbench, "unclamped");
        }

        @Override
        NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before) {
            if (!before.clamped()) {
                throw new OperationFailed("the clamps are already loose. Tighten them with polewright clamp.");
            }
            return new NightEvent.Unclamped();
        }
    }

    @Command(name = "knock", description = "Log that the tripod or mount was knocked or moved.")
    static final class Knock extends DoneCommand {
        Knock(Workbench workbench) {
            super(workbench, "knocked");
        }

        @Override
        NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before) {
            return new NightEvent.Knocked();
        }
    }

    @Command(name = "note", description = "Log a remark.")
    static final class Note extends DoneCommand {
        @Parameters(paramLabel = "TEXT", arity = "1..*", description = "The remark.")
        private List<String> words;

        Note(Workbench workbench) {
            super(workbench, "note");
        }

        @Override
        NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before) {
            return new NightEvent.Noted(String.join(" ", words));
        }
    }

    @Command(name = "undo", description = "Take back the last event, or the one with this number.")
    static final class Undo extends AppendingCommand {
        @Parameters(paramLabel = "SEQ", arity = "0..1", description = "The event's number, as polewright log shows it.")
        private @Nullable Long seq;

        private long takenBack;
        private String what = "";

        Undo(Workbench workbench) {
            super(workbench, "taken back");
        }

        @Override
        NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before) {
            takenBack = seq != null
                    ? seq
                    : before.lastUndoable()
                            .orElseThrow(() -> new OperationFailed(
                                    "only the beginning of the night is left, which cannot be undone. Begin"
                                            + " another night instead."))
                            .seq();
            Withdrawals.by(night(), takenBack).ifPresent(by -> {
                throw new OperationFailed("#" + takenBack + " is already taken back: to restore it, take back #" + by
                        + ", with polewright undo " + by + ".");
            });
            what = night().stream()
                    .filter(earlier -> earlier.seq() == takenBack)
                    .findFirst()
                    .map(earlier -> " (" + EventWords.of(earlier.event())
                            + (EventWords.isWithdrawal(earlier) ? ", which counts again)" : ")"))
                    .orElse("");
            return new NightEvent.Withdrawn(takenBack);
        }

        @Override
        String logged() {
            return "#" + takenBack + " taken back" + what;
        }
    }
}
