package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.camera.Drive;
import polewright.operations.Workbench;
import polewright.operations.camera.PlacedFrame;
import polewright.operations.watch.WatchEvent;
import polewright.operations.watch.WatchListener;
import polewright.operations.watch.WatchLog;
import polewright.operations.watch.WatchStep;
import polewright.report.json.NightJson;
import polewright.report.json.WatchJson;
import polewright.report.text.AdviceWords;
import polewright.report.text.AxisWords;
import polewright.report.text.EventWords;
import polewright.report.text.FixWords;
import polewright.report.text.Line;
import polewright.report.text.WatchWords;
import polewright.session.NightState;
import polewright.session.event.NightEvent;

/**
 * Prints the results of a watch: lines of text, the last of which is overwritten while screws are turned; or one JSON
 * value per frame.
 */
final class WatchReport implements WatchListener {
    private final Workbench workbench;
    private final Output output;
    private final Drive drive;
    private boolean lineIsOpen;
    private List<String> lastNotes = List.of();
    private boolean isClamped;
    private String order;

    /** @param night when the watch begins */
    WatchReport(Workbench workbench, Output output, NightState night, Drive drive) {
        this.workbench = workbench;
        this.output = output;
        this.isClamped = night.clamped();
        this.order = order(night);
        this.drive = drive;
    }

    void began(Path folder, int passedOver, boolean turning) {
        say(List.of("Watching " + folder + (turning ? " while you turn the screws." : ".")
                + (passedOver == 0 ? "" : " " + WatchWords.passedOver(passedOver))
                + " Stop with Ctrl-C."));
    }

    @Override
    public void on(WatchEvent event) {
        if (event instanceof WatchEvent.Noted noted) {
            note(noted.line());
        } else if (event instanceof WatchEvent.Refused refused) {
            refused(refused.frame(), refused.line());
        } else if (event instanceof WatchEvent.Told told) {
            step(told.frame(), told.step());
        } else if (event instanceof WatchEvent.Logged logged) {
            logged(logged.entry());
        } else if (event instanceof WatchEvent.NotLogged notLogged) {
            note(notLogged.line());
        } else if (event instanceof WatchEvent.Ended) {
            ended();
        }
    }

    /** In addition to the results of frames. */
    private void note(String line) {
        say(List.of(line));
        print(WatchJson.note(line));
    }

    private void refused(String frame, String line) {
        say(List.of(line));
        print(WatchJson.refused(frame, line));
    }

    private void step(PlacedFrame frame, WatchStep step) {
        print(WatchJson.of(frame, step, drive));
        if (step instanceof WatchStep.ScrewsFollowed followed) {
            List<String> notes = WatchWords.notes(followed).stream()
                    .map(note -> "NOTE  " + note)
                    .toList();
            if (!notes.equals(lastNotes)) {
                say(notes);
                lastNotes = notes;
            }
            if (isClamped) {
                say(List.of(WatchWords.movedTo(frame, followed).strip(), order));
            } else {
                live(WatchWords.screws(frame, followed));
            }
            return;
        }
        List<String> lines = new ArrayList<>();
        lines.add(AxisWords.frame(frame));
        if (step instanceof WatchStep.Placed placed) {
            lines.add(WatchWords.placed(placed));
        } else if (step instanceof WatchStep.StartedAfresh afresh) {
            lines.add(WatchWords.startedAfresh(afresh));
        } else if (step instanceof WatchStep.AxisFound found) {
            addAxis(lines, found.axis());
        } else if (step instanceof WatchStep.AxisSharpened sharper) {
            addAxis(lines, sharper.axis());
        }
        say(lines);
    }

    private void logged(WatchLog.Entry entry) {
        isClamped = entry.night().clamped();
        order = order(entry.night());
        boolean isTurned = entry.moved()
                .filter(moved -> moved.event() instanceof NightEvent.ScrewsTurned)
                .isPresent();
        entry.moved()
                .ifPresent(moved -> note("Logged #" + moved.seq()
                        + (isTurned
                                ? ": " + EventWords.of(moved.event()) + "."
                                : ": the axis moved, and no turn of the screws explains it.")));
        print(NightJson.afterEvent(entry.event(), entry.night()));
        List<String> lines = new ArrayList<>();
        lines.add("Logged #" + entry.event().seq() + ": camera frames.");
        if (isTurned && !isClamped) {
            // With a hand on the screws: the next turn is in the line of the frame itself.
            lines.addAll(FixWords.contradictions(entry.night()));
        } else {
            lines.addAll(FixWords.beforeAdvice(entry.night()));
            lines.addAll(FixWords.contradictions(entry.night()));
            lines.addAll(Line.inTerminal(AdviceWords.whileFollowed(entry.night())));
        }
        say(lines);
    }

    /** The first line of the advice: an answer to a frame ends with it. */
    private static String order(NightState night) {
        return AdviceWords.whileFollowed(night).get(0).inTerminal();
    }

    private void ended() {
        say(List.of("The watch has ended."));
    }

    private void addAxis(List<String> lines, AxisFromFrames axis) {
        lines.addAll(AxisWords.ofFramesAlone(axis, drive));
        lines.addAll(AxisWords.notes(axis, drive));
    }

    private void print(ObjectNode node) {
        if (output.isJson()) {
            output.print(workbench, node);
        }
    }

    private void say(List<String> lines) {
        if (output.isJson() || lines.isEmpty()) {
            return;
        }
        if (lineIsOpen) {
            workbench.out().println();
            lineIsOpen = false;
        }
        output.say(workbench, lines);
    }

    /** Overwrites the last such line on a terminal; elsewhere a line of its own. */
    private void live(String line) {
        if (output.isJson()) {
            return;
        }
        if (workbench.terminal()) {
            output.overwrite(workbench, line);
            lineIsOpen = true;
        } else {
            output.say(workbench, line);
        }
    }
}
