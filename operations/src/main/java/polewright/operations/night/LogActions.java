package polewright.operations.night;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.operations.OperationFailed;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Text;
import polewright.operations.action.ArgumentType.Whole;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.session.event.Correction;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;

/** Notes, and corrections of what has been logged. */
public final class LogActions {
    private static final int SECONDS_A_MINUTE = 60;
    // 50 years are 2.6e7 minutes; a larger clock error must be a typing error.
    private static final double MOST_MINUTES = 1e8;

    private static final Argument<String> TEXT = Argument.positional(
                    "text",
                    "Note",
                    String.format(Locale.ROOT, "Up to %,d characters.", NightEvent.Noted.LONGEST),
                    new Text("TEXT"))
            .required();
    static final Argument<Long> EVENT = Argument.positional(
                    "seq", "Number of the event", "As in the log.", new Whole("SEQ"))
            .otherwise("the last event");
    static final Argument<Double> ADD = Argument.option(
                    "add",
                    "Minutes to add",
                    "Negative if the clock was ahead.",
                    Figure.signed(Unit.MINUTES).between(-MOST_MINUTES, MOST_MINUTES, "give the clock error in minutes"))
            .required();
    static final Argument<Long> FIRST = Argument.positional(
                    "first", "From event number", "The first with a wrong time, as in the log.", new Whole("FIRST"))
            .required();
    private static final Argument<Long> LAST = Argument.positional("last", "To event number", "", new Whole("LAST"))
            .otherwise("the last event");

    public static final Action NOTE = Action.of(
                    "note",
                    List.of("note"),
                    "Write a note",
                    "",
                    (entries, context) -> List.of(new NightEvent.Noted(entries.of(TEXT))))
            .taking(TEXT)
            .at(Action.Timing.DONE);
    public static final Action UNDO = Action.of(
                    "undo",
                    List.of("undo"),
                    "Take back an event",
                    "It stays in the log but no longer counts.",
                    LogActions::withdrawn)
            .taking(EVENT)
            .sentBy("Take it back");
    public static final Action RETIME = Action.of(
                    "retime",
                    List.of("retime"),
                    "The clock was wrong",
                    "Corrects the times of events logged by it. Times that were typed, and those of camera frames,"
                            + " stay.",
                    LogActions::retimed)
            .taking(ADD, FIRST, LAST)
            .sentBy("Correct them")
            .forExample("the clock was an hour behind from event 6 on", "6 --add 60")
            .forExample("it was 61 minutes ahead until event 5", "1 5 --add=-61");

    private LogActions() {}

    private static List<NightEvent> withdrawn(Entries entries, ActionContext context) {
        long seq = entries.given(EVENT)
                .or(() -> context.before().lastUndoable().map(LoggedEvent::seq))
                .orElseThrow(() -> new OperationFailed("only the beginning of the night is left, which cannot be"
                        + " undone. Begin another night instead."));
        withdrawnBy(context.night(), seq).ifPresent(by -> {
            throw new OperationFailed(
                    "#" + seq + " is already taken back: to restore it, take back #" + by + " with {do:undo}.");
        });
        return List.of(new NightEvent.Withdrawn(seq));
    }

    /** The last event that withdrew this one and was not withdrawn itself. */
    public static Optional<Long> withdrawnBy(List<LoggedEvent> night, long seq) {
        return night.stream()
                .filter(later -> later.event() instanceof NightEvent.Withdrawn withdrawn && withdrawn.seq() == seq)
                .map(LoggedEvent::seq)
                .filter(by -> withdrawnBy(night, by).isEmpty())
                .reduce((earlier, later) -> later);
    }

    private static List<NightEvent> retimed(Entries entries, ActionContext context) {
        long newest = context.night().get(context.night().size() - 1).seq();
        return List.of(new Correction.ClockCorrected(
                entries.of(FIRST),
                entries.given(LAST).orElse(newest),
                Duration.ofSeconds(Math.round(entries.of(ADD) * SECONDS_A_MINUTE))));
    }
}
