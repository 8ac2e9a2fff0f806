package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import polewright.operations.LogEntry;
import polewright.operations.Workbench;
import polewright.report.json.NightJson;
import polewright.report.text.AdviceWords;
import polewright.report.text.FixWords;
import polewright.report.text.FrameWords;
import polewright.report.text.MountNotes;
import polewright.session.NightId;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.store.LogChanged;
import polewright.store.NightLog;
import polewright.store.Submission;

/** A command that adds one or more events to the last night, then says what that changed. */
abstract class AppendingCommand implements Callable<Integer> {
    private final Workbench workbench;
    private final String logged;
    private List<LoggedEvent> night = List.of();

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

    /** The event that was typed; options that cannot be used are an {@link polewright.sky.InputRefused}. */
    abstract NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before);

    /** The typed events, all logged or none: usually one, several for a command that accepts a list. */
    List<NightEvent> events(Workbench bench, NightEvent.Begun begun, NightState before) {
        return List.of(event(bench, begun, before));
    }

    /** All of the night before it, including withdrawn events. */
    final List<LoggedEvent> night() {
        return night;
    }

    /** The time that was typed with it, if any. */
    Optional<Instant> given() {
        return Optional.empty();
    }

    /** The time of the event in the log; a sighting also has a time of its own. */
    Instant happened(Instant now) {
        return now;
    }

    /** What was logged, in a few words; called after {@link #event}. */
    String logged() {
        return logged;
    }

    final Output output() {
        return output;
    }

    final Workbench bench() {
        return workbench;
    }

    /** The interpretation of what was typed, for the user; called after {@link #event}. */
    List<String> found() {
        return List.of();
    }

    /** The same as JSON. */
    Optional<ObjectNode> foundJson() {
        return Optional.empty();
    }

    /** Cautions and notes about it; called after {@link #event}. */
    List<String> notes() {
        return List.of();
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
            Optional<Submission> sent = once.key().flatMap(opened::submitted);
            if (sent.isPresent()) {
                return answerAgain(opened, sent.get());
            }
            try {
                return appendNew(opened);
            } catch (LogChanged | InputRefused e) {
                // Two devices may submit at once: then the conflicting event is this one.
                return once.key()
                        .flatMap(opened::submitted)
                        .map(meanwhile -> answerAgain(opened, meanwhile))
                        .orElseThrow(() -> e);
            }
        }
    }

    private NightState appendNew(NightLog opened) {
        NightId id = LogOption.latest(opened);
        night = opened.events(id);
        // Before any message about what was typed: for another night it may make no sense.
        known.known().check(id, night.get(night.size() - 1).seq());
        NightState.ModelCache models = new NightState.ModelCache();
        Instant now = workbench.now();
        NightState before = NightState.of(night, now, models);
        List<NightEvent> events = WrongUsage.unlessUsable(() -> events(workbench, before.begun(), before));
        List<LoggedEvent> done = LogEntry.append(opened, id, events, happened(now), models, once.key(), known.known());
        NightState after = NightState.of(opened.events(id), now, models);
        Set<String> notes = new LinkedHashSet<>();
        for (NightEvent event : events) {
            notes.addAll(SunCaution.of(event, before.begun().site()));
            notes.addAll(FrameWords.notes(event, before.begun().site()));
            notes.addAll(EntryTimeCheck.notes(before, event, given(), now));
            notes.addAll(MountNotes.of(event, before));
        }
        notes.addAll(notes());
        report(done, after, List.copyOf(notes));
        return after;
    }

    /** It is already logged, but the sender did not receive the answer. */
    private NightState answerAgain(NightLog opened, Submission sent) {
        NightState now = NightState.of(opened.events(sent.night()), workbench.now(), new NightState.ModelCache());
        if (output.isJson()) {
            ObjectNode node = answer(sent.event(), now);
            node.putArray("notes");
            output.print(workbench, node);
        } else {
            output.say(workbench, "Already logged as #" + sent.event().seq() + "; nothing added.");
            output.say(workbench, AdviceWords.of(now));
        }
        return now;
    }

    private void report(List<LoggedEvent> done, NightState after, List<String> notes) {
        LoggedEvent first = done.get(0);
        LoggedEvent last = done.get(done.size() - 1);
        if (output.isJson()) {
            ObjectNode node = answer(first, after);
            notes.forEach(node.putArray("notes")::add);
            foundJson().ifPresent(found -> node.set("found", found));
            output.print(workbench, node);
            return;
        }
        output.say(workbench, found());
        output.say(
                workbench,
                "Logged #" + first.seq() + (done.size() == 1 ? "" : " to #" + last.seq()) + ": " + logged() + ".");
        output.say(workbench, notes);
        output.say(workbench, FixWords.beforeAdvice(after));
        output.say(workbench, FixWords.doubts(after));
        output.say(workbench, MistakeRemedies.of(after));
        output.say(workbench, AdviceWords.of(after));
    }
}
