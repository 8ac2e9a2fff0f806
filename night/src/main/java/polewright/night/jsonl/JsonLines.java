package polewright.night.jsonl;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;
import polewright.night.event.EventOrder;
import polewright.night.event.LoggedEvent;
import polewright.sky.InputRefused;

/**
 * Nights as text: JSON Lines, one event a line, UTF-8. docs/events.md has every kind with its keys and units.
 *
 * <p>What is written reads back to equal events, every double to the same bits. Reading is strict: a key that is not
 * known, missing, or of the wrong type is refused by name, and with one line the whole file.
 */
public final class JsonLines {
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private JsonLines() {}

    /** One event as one line, without the line's end. */
    public static String write(LoggedEvent event) {
        return FieldWriter.line(out -> EventJson.write(out, event));
    }

    /** A night as lines, each with its end. */
    public static void write(List<LoggedEvent> night, Appendable out) throws IOException {
        for (LoggedEvent event : night) {
            out.append(write(event)).append('\n');
        }
    }

    /**
     * One event from its line, whatever may have stood before it.
     *
     * @param seqWhenLeftOut the number of an event that does not say its own
     * @throws InputRefused when the line is not an event
     */
    public static LoggedEvent readLine(String line, long seqWhenLeftOut, BodyNames names) {
        return FieldReader.read(JsonLineParser.parse(line), in -> EventJson.read(in, seqWhenLeftOut, names));
    }

    /**
     * A whole night. Empty lines are passed over; an event without a number gets the one after the event before it.
     *
     * @param names finds the stars that are given by name alone
     */
    public static Reading read(Reader text, BodyNames names) throws IOException {
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
                night.add(next(line, night, names));
            } catch (InputRefused e) {
                return new Reading.Refused(e.at("line " + number));
            }
        }
        if (night.isEmpty()) {
            return new Reading.Refused(
                    new InputRefused("there is no event in it", "give a file with one event a line, a begin first"));
        }
        return new Reading.Accepted(night);
    }

    private static LoggedEvent next(String line, List<LoggedEvent> before, BodyNames names) {
        long last = before.isEmpty() ? 0 : before.get(before.size() - 1).seq();
        LoggedEvent event = readLine(line, last + 1, names);
        EventOrder.checkNext(event, last, seq -> before.stream().anyMatch(e -> e.seq() == seq));
        return event;
    }
}
