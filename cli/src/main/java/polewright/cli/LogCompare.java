package polewright.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import polewright.operations.Workbench;
import polewright.operations.seasons.LoggedNights;
import polewright.planning.seasons.NightGap;
import polewright.planning.seasons.NightRecord;
import polewright.planning.seasons.Pier;
import polewright.report.json.SeasonsJson;
import polewright.report.text.CompareWords;
import polewright.session.NightId;
import polewright.store.NightLog;

@Command(
        name = "compare",
        description = "Show two nights side by side, and how the axis moved between them.",
        footer = {"", "For example:", "  polewright log compare 3 4"})
final class LogCompare implements Callable<Integer> {
    private final Workbench workbench;

    @Parameters(index = "0", paramLabel = "NIGHT", description = "Its number, from polewright log nights.")
    private long first;

    @Parameters(index = "1", paramLabel = "NIGHT", description = "The other one.")
    private long second;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    LogCompare(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        if (first == second) {
            throw new WrongUsage("night " + first + " is given twice. Give two different nights.");
        }
        try (NightLog opened = log.openExisting(workbench)) {
            NightRecord one = record(opened, first);
            NightRecord other = record(opened, second);
            boolean isInOrder = !other.begunAt().isBefore(one.begunAt());
            NightRecord earlier = isInOrder ? one : other;
            NightRecord later = isInOrder ? other : one;
            LoggedNights nights = LoggedNights.of(Pier.of(earlier.begun()), opened);
            NightGap gap = NightGap.between(earlier, later, nights.records());
            if (output.isJson()) {
                output.print(workbench, SeasonsJson.compared(List.of(earlier, later), gap));
            } else {
                output.show(workbench, CompareWords.table(earlier, later));
                output.say(workbench, CompareWords.between(gap));
            }
        }
        return 0;
    }

    private static NightRecord record(NightLog opened, long number) {
        NightId night = new NightId(number);
        return NightRecord.of(night, opened.events(night));
    }
}
