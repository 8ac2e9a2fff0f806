package polewright.session.jsonl;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;
import polewright.session.event.EventOrder;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.fields.BodyNames;
import polewright.sky.fields.FieldReader;

/**
 * Nights as text: JSON Lines, one event a line, UTF-8. docs/events.md lists every kind with its keys and units.
 *
 * <p>Written events read back equal, every double to the same bits. Reading is strict: a key that is unknown, missing,
 * or of the wrong type is refused by name, and one refused line refuses the whole file.
 */
public final class JsonLines {
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private JsonLines() {}

    /** One event as one line, without the line terminator. */
    public static String write(LoggedEvent event) {
        return JsonFieldWriter.line(out -> EventJson.write(out, event));
    }

    /** A night as lines, each with its terminator. */
    public static void write(List<LoggedEvent> night, Appendable out) throws IOException {
        for (LoggedEvent event : night) {
            out.append(write(event)).append('\n');
        }
    }

    /**
     * One event from its line, independent of what came before.
     *
     * @param seqWhenLeftOut the number of an event without one
     * @throws InputRefused if the line is not an event
     */
    public static LoggedEvent readLine(String line, long seqWhenLeftOut, BodyNames names) {
        return FieldReader.read(JsonLineParser.parse(line), in -> EventJson.read(in, seqWhenLeftOut, names));
    }

    /**
     * A whole night. Empty lines are skipped; an event without a number gets the next one after the event before it.
     *
     * @param names finds stars given only by name
     */
    public static Reading read(Reader text, BodyNames names) throws IOException {
        try {
            return new Reading.Accepted(read(text, names, false).get(0));
        } catch (InputRefused e) {
            return new Reading.Refused(e);
        }
    }

    /**
     * One or several nights, one after the other: each begin event starts the next.
     *
     * @throws InputRefused if a line is wrong; its message starts with the line
     */
    public static List<List<LoggedEvent>> readNights(Reader text, BodyNames names) throws IOException {
        return read(text, names, true);
    }

    private static List<List<LoggedEvent>> read(Reader text, BodyNames names, boolean mayBeSeveral) throws IOException {
        List<List<LoggedEvent>> nights = new ArrayList<>();
        List<LoggedEvent> night = new ArrayList<>();
        BufferedReader lines = new BufferedReader(text);
        int number = 0;
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            number++;
            if (number == 1 && line.startsWith(BYTE_ORDER_MARK)) {
                line = line.substring(BYTE_ORDER_MARK.length());
            }
            if (line.isBlank()) {
                continue;
            }
            try {
                LoggedEvent event = readLine(line, nextSeq(night), names);
                if (mayBeSeveral && event.event() instanceof NightEvent.Begun && !night.isEmpty()) {
                    nights.add(List.copyOf(night));
                    night.clear();
                    event = readLine(line, nextSeq(night), names);
                }
                checkNext(event, night);
                night.add(event);
            } catch (InputRefused e) {
                throw e.at("line " + number);
            }
        }
        if (night.isEmpty()) {
            throw new InputRefused("there is no event in it", "give a file with one event a line, a begin first");
        }
        nights.add(List.copyOf(night));
        return nights;
    }

    private static long nextSeq(List<LoggedEvent> before) {
        return before.isEmpty() ? 1 : before.get(before.size() - 1).seq() + 1;
    }

    private static void checkNext(LoggedEvent event, List<LoggedEvent> before) {
        EventOrder.checkNext(event, nextSeq(before) - 1, seq -> before.stream().anyMatch(e -> e.seq() == seq));
    }
}
