package polewright.operations.night;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import polewright.operations.LogEntry;
import polewright.operations.OperationFailed;
import polewright.operations.input.BodyFinder;
import polewright.session.NightId;
import polewright.session.event.LoggedEvent;
import polewright.session.jsonl.JsonLines;
import polewright.store.NightLog;
import polewright.store.SubmissionKey;

/** Nights as a file of JSON Lines. */
public final class NightsFile {
    private NightsFile() {}

    /** The events of a file with one night; refuses the whole file if a line is invalid. */
    public static List<LoggedEvent> readOne(Path file) {
        return read(file, text -> JsonLines.read(text, new BodyFinder()).orThrow());
    }

    /** One night or several, each from its begin event to the next; refuses the whole file if a line is invalid. */
    private static List<List<LoggedEvent>> readAll(Path file) {
        return read(file, text -> JsonLines.readNights(text, new BodyFinder()));
    }

    /**
     * Adds all nights of a file to a log, or none.
     *
     * @param goesOn whether the last of them is still in progress
     * @return the numbers of the nights, and the events that they have together
     */
    public static Added addTo(NightLog opened, Path file, boolean goesOn, Optional<SubmissionKey> once) {
        List<List<LoggedEvent>> nights = readAll(file);
        return new Added(
                LogEntry.importNights(opened, nights, goesOn, once),
                nights.stream().mapToLong(List::size).sum());
    }

    /**
     * Nights that were added.
     *
     * @param nights one or more
     * @param events how many they have together
     */
    public record Added(List<NightId> nights, long events) {
        public Added {
            nights = List.copyOf(nights);
        }
    }

    /** The text of such a file. */
    public static String text(Collection<List<LoggedEvent>> nights) {
        StringWriter text = new StringWriter();
        try {
            for (List<LoggedEvent> night : nights) {
                JsonLines.write(night, text);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("memory takes all that is written", e);
        }
        return text.toString();
    }

    public static String count(long events) {
        return events + (events == 1 ? " event" : " events");
    }

    @FunctionalInterface
    private interface Parsing<T> {
        T parse(Reader text) throws IOException;
    }

    private static <T> T read(Path file, Parsing<T> parsing) {
        try (Reader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            return parsing.parse(text);
        } catch (CharacterCodingException e) {
            throw new OperationFailed(file + " is not text in UTF-8. Save it as JSON Lines in UTF-8.");
        } catch (IOException e) {
            throw new OperationFailed(file + " cannot be read. Check the name.");
        }
    }
}
