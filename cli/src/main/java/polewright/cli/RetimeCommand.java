package polewright.cli;

import java.time.Duration;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.operations.Workbench;
import polewright.session.NightState;
import polewright.session.event.Correction;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;

@Command(
        name = "retime",
        description = {
            "Correct the times of events that were logged while the computer's clock was off.",
            "Times that were typed, and those of camera frames, are not changed."
        },
        footer = {
            "",
            "For example, if the clock was an hour behind from event 6 on:",
            "  polewright retime 6 --add 60",
            "or 61 minutes ahead until event 5:",
            "  polewright retime 1 5 --add=-61"
        })
final class RetimeCommand extends AppendingCommand {
    private static final int SECONDS_A_MINUTE = 60;

    @Parameters(
            index = "0",
            paramLabel = "FIRST",
            description = "The first event with a wrong time, as polewright log shows it.")
    private long first;

    @Parameters(
            index = "1",
            paramLabel = "LAST",
            arity = "0..1",
            description = "The last of them. Default: the last event.")
    private @Nullable Long last;

    @Option(
            names = "--add",
            paramLabel = "MINUTES",
            required = true,
            description = "Minutes to add to each time; negative if the clock was ahead.")
    private double minutes;

    RetimeCommand(Workbench workbench) {
        super(workbench, "times corrected");
    }

    @Override
    NightEvent event(Workbench bench, NightEvent.Begun begun, NightState before) {
        long newest = night().get(night().size() - 1).seq();
        if (!(Math.abs(minutes) <= 1e8)) {
            throw new InputRefused(
                    "adding " + minutes + " minutes is beyond 50 years", "give the clock error in minutes");
        }
        return new Correction.ClockCorrected(
                first, last == null ? newest : last, Duration.ofSeconds(Math.round(minutes * SECONDS_A_MINUTE)));
    }

    @Override
    String logged() {
        return "times corrected from #" + first + " on";
    }
}
