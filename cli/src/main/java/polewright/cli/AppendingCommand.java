package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import polewright.operations.Workbench;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.NightEntry;
import polewright.report.json.NightJson;
import polewright.report.text.AdviceWords;
import polewright.report.text.EventRemarks;
import polewright.report.text.FixWords;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.store.NightLog;

/** A command that adds one or more events to the last night, then says what that changed. */
abstract class AppendingCommand implements Callable<Integer> {
    private final Workbench workbench;
    private final String logged;

    @Mixin
    private Output output;

    @Mixin
    private LogOption log;

    @Mixin
    private OnceOption once;

    @Mixin
    private KnownOptions known;

    /**
     * A command for one kind of event.
     *
     * @param logged what was logged, in a few words
     */
    AppendingCommand(Workbench workbench, String logged) {
        this.workbench = workbench;
        this.logged = logged;
    }

    /**
     * What was typed: all of it is logged, or nothing. Options that cannot be used are an {@link polewright.sky.InputRefused}.
     */
    abstract NightEntry.Entered entered(ActionContext context);

    /** The time that was typed with it, if any. */
    Optional<Instant> given() {
        return Optional.empty();
    }

    /** What a typed time means. */
    Action.Timing timing() {
        return Action.Timing.NOW;
    }

    /** Whether the person has confirmed an entry that looks like a mistake. */
    boolean isConfirmed() {
        return false;
    }

    /** What was logged, in a few words; called after {@link #entered}. */
    String logged() {
        return logged;
    }

    /** The same, once the outcome is known. */
    String logged(NightEntry.Logged done) {
        return logged();
    }

    final Output output() {
        return output;
    }

    final Workbench bench() {
        return workbench;
    }

    /** Names arguments and actions as they are typed. */
    TerminalWording wording() {
        return TerminalWording.GENERAL;
    }

    /** The interpretation of what was typed, for the user. */
    List<String> found(NightEntry.Logged entry) {
        return List.of();
    }

    /** The same as JSON. */
    Optional<ObjectNode> foundJson(NightEntry.Logged entry) {
        return Optional.empty();
    }

    /** The beginning of a JSON answer. */
    ObjectNode answer(LoggedEvent logged, NightState after) {
        return NightJson.afterEvent(logged, after);
    }

    /** Follow-up once the event is logged and reported. */
    void afterwards(NightState night) {}

    final LogOption log() {
        return log;
    }

    @Override
    public Integer call() {
        afterwards(append());
        return 0;
    }

    private NightState append() {
        try (NightLog opened = log.openExisting(workbench)) {
            NightEntry.Sent sent = new NightEntry.Sent(once.key(), known.known(), given(), isConfirmed());
            NightEntry.Outcome outcome =
                    NightEntry.add(opened, workbench.now(), workbench.clock().getZone(), sent, timing(), this::usable);
            if (outcome instanceof NightEntry.Logged logged) {
                report(logged);
            } else if (outcome instanceof NightEntry.AlreadyLogged already) {
                reportAgain(already);
            }
            return outcome.after();
        }
    }

    private NightEntry.Entered usable(ActionContext context) {
        return WrongUsage.unlessUsable(() -> entered(context));
    }

    private void reportAgain(NightEntry.AlreadyLogged already) {
        if (output.isJson()) {
            ObjectNode node = answer(already.event(), already.after());
            node.putArray("notes");
            output.print(workbench, node);
        } else {
            output.say(workbench, "Already logged as #" + already.event().seq() + "; nothing added.");
            output.report(workbench, AdviceWords.of(already.after()));
        }
    }

    private List<String> notes(NightEntry.Logged logged) {
        return EventRemarks.of(logged).stream()
                .map(remark -> wording().of(remark.line()))
                .toList();
    }

    private void report(NightEntry.Logged logged) {
        NightState after = logged.after();
        List<String> notes = notes(logged);
        if (output.isJson()) {
            ObjectNode node = answer(logged.first(), after);
            notes.forEach(node.putArray("notes")::add);
            foundJson(logged).ifPresent(found -> node.set("found", found));
            output.print(workbench, node);
            return;
        }
        long first = logged.first().seq();
        long last = logged.last().seq();
        output.say(workbench, found(logged));
        output.say(workbench, "Logged #" + first + (first == last ? "" : " to #" + last) + ": " + logged(logged) + ".");
        output.say(workbench, notes);
        output.say(workbench, FixWords.beforeAdvice(after));
        output.report(workbench, FixWords.doubts(after));
        output.say(workbench, RemedyWords.of(after));
        output.report(workbench, AdviceWords.of(after));
    }
}
