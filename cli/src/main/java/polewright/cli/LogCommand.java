package polewright.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import polewright.operations.Workbench;
import polewright.report.text.EventWords;
import polewright.session.NightSummary;
import polewright.session.StandingEvents;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.session.jsonl.JsonLines;
import polewright.store.NightLog;

@Command(
        name = "log",
        description = "Show the log, compare nights, export or import a night, or rescue a damaged log.",
        subcommands = {
            LogExport.class,
            LogImport.class,
            LogRescuing.class,
            LogCommand.Nights.class,
            LogCompare.class,
            LogSeasons.class
        })
final class LogCommand implements Callable<Integer> {
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("HH:mm").withZone(ZoneOffset.UTC);

    private static final DateTimeFormatter DAY_AND_TIME =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm").withZone(ZoneOffset.UTC);

    private static final Duration ENTERED_AT_ONCE = Duration.ofMinutes(1);

    private final Workbench workbench;

    @Mixin
    private NightSelection night;

    @Mixin
    private Output output;

    LogCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        night.read(workbench, (id, events) -> show(events));
        return 0;
    }

    private void show(List<LoggedEvent> events) {
        if (output.isJson()) {
            print(events);
        } else {
            output.say(workbench, lines(events));
        }
    }

    private void print(List<LoggedEvent> events) {
        // Already JSON: the keys are those of docs/events.md.
        output.printTexts(workbench, events.stream().map(JsonLines::write).toList());
    }

    private static List<String> lines(List<LoggedEvent> events) {
        StandingEvents standing = StandingEvents.among(events);
        Map<Long, Long> replacements = standing.replacements();
        // The time of day alone would be ambiguous if a night, or several, run past midnight.
        boolean isOneDay = events.stream().map(LogCommand::day).distinct().count() == 1;
        DateTimeFormatter time = isOneDay ? TIME : DAY_AND_TIME;
        List<String> lines = new ArrayList<>();
        for (LoggedEvent logged : events) {
            boolean counts = standing.has(logged.seq()) || EventWords.isWithdrawal(logged);
            lines.add(String.format(
                    java.util.Locale.ROOT,
                    "#%-3d %s UTC  %s%s",
                    logged.seq(),
                    time.format(logged.at()),
                    EventWords.of(logged, standing.asLogged()) + seenEarlier(logged),
                    !counts ? " (taken back)" : EventWords.replaced(logged, replacements)));
        }
        return lines;
    }

    private static LocalDate day(LoggedEvent logged) {
        return logged.at().atOffset(ZoneOffset.UTC).toLocalDate();
    }

    /** The time of a measurement, if it differs from that of its entry. */
    private static String seenEarlier(LoggedEvent logged) {
        if (logged.event() instanceof NightEvent.Measurement measured) {
            Instant seen = measured.seenAt();
            if (Duration.between(seen, logged.at()).abs().compareTo(ENTERED_AT_ONCE) > 0) {
                boolean isSameDay = seen.atOffset(ZoneOffset.UTC).toLocalDate().equals(day(logged));
                return " (from " + (isSameDay ? TIME : DAY_AND_TIME).format(seen) + ")";
            }
        }
        return "";
    }

    @Command(name = "nights", description = "List the nights in the log.")
    static final class Nights implements Callable<Integer> {
        private final Workbench workbench;

        @Mixin
        private LogOption log;

        @Mixin
        private Output output;

        Nights(Workbench workbench) {
            this.workbench = workbench;
        }

        @Override
        public Integer call() {
            try (NightLog opened = log.openExisting(workbench)) {
                List<NightSummary> nights = opened.nights();
                if (output.isJson()) {
                    output.print(workbench, nights.stream().map(Nights::json).toList());
                } else {
                    output.say(workbench, nights.stream().map(Nights::line).toList());
                }
            }
            return 0;
        }

        private static String line(NightSummary night) {
            return "night " + night.id().number() + "  " + night.begunAt() + "  " + night.siteName() + ", "
                    + night.events() + (night.events() == 1 ? " event" : " events");
        }

        private static ObjectNode json(NightSummary night) {
            ObjectNode node = JsonNodeFactory.instance.objectNode();
            node.put("night", night.id().number());
            node.put("begun_at", night.begunAt().toString());
            node.put("site_name", night.siteName());
            node.put("events", night.events());
            return node;
        }
    }
}
