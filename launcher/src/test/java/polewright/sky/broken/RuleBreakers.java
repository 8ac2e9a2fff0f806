package polewright.sky.broken;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Random;
import picocli.CommandLine;
import polewright.mount.rig.MountKind;

/** One class for each way to break a rule. */
public final class RuleBreakers {
    private RuleBreakers() {}

    /** The sky knows nothing of mounts. */
    public record SkyThatKnowsMounts(MountKind kind) {}

    /** The time comes in as an argument. */
    public static final class ClockReader {
        private ClockReader() {}

        static Instant time() {
            return Instant.now();
        }
    }

    /** So does the zone. */
    public static final class ZoneReader {
        private ZoneReader() {}

        static ZoneId zone() {
            return ZoneId.systemDefault();
        }
    }

    /** So does the dice. */
    public static final class DiceRoller {
        private DiceRoller() {}

        static int roll(Random random) {
            return random.nextInt(6);
        }
    }

    /** Files are for the edge. */
    public static final class FileReader {
        private FileReader() {}

        static boolean exists(String name) {
            return Files.exists(Path.of(name));
        }
    }

    /** Each library has its room. */
    public static final class LibraryUser {
        private LibraryUser() {}

        static String json() {
            return JsonNodeFactory.instance.objectNode().toString();
        }

        static CommandLine commands(Object command) {
            return new CommandLine(command);
        }
    }

    /** Printing is the process's business. */
    public static final class Printer {
        private Printer() {}

        static void print() {
            System.out.println("here");
        }
    }

    /** A value that changes. */
    public static final class Changeable {
        private int count;

        int next() {
            return ++count;
        }
    }

    /** A drawer for whatever is left over. */
    public static final class AngleHelper {
        private AngleHelper() {}
    }
}
