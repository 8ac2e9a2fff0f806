package polewright.sky.broken;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Random;
import picocli.CommandLine;
import polewright.alignment.work.Guiding;
import polewright.mount.rig.MountKind;

/** One class for each way of breaking an architecture rule. */
public final class RuleBreakers {
    private RuleBreakers() {}

    /** Breaks: the sky does not depend on mounts. */
    public record SkyThatKnowsMounts(MountKind kind) {}

    /** Breaks: the time is an argument. */
    public static final class ClockReader {
        private ClockReader() {}

        static Instant time() {
            return Instant.now();
        }
    }

    /** Breaks: the time zone is an argument. */
    public static final class ZoneReader {
        private ZoneReader() {}

        static ZoneId zone() {
            return ZoneId.systemDefault();
        }
    }

    /** Breaks: the random generator is an argument. */
    public static final class DiceRoller {
        private DiceRoller() {}

        static int roll(Random random) {
            return random.nextInt(6);
        }
    }

    /** Breaks: file access belongs at the edge. */
    public static final class FileReader {
        private FileReader() {}

        static boolean exists(String name) {
            return Files.exists(Path.of(name));
        }
    }

    /** Breaks: each library is used in one package only. */
    public static final class LibraryUser {
        private LibraryUser() {}

        static String json() {
            return JsonNodeFactory.instance.objectNode().toString();
        }

        static CommandLine commands(Object command) {
            return new CommandLine(command);
        }
    }

    /** Breaks: only the process prints. */
    public static final class Printer {
        private Printer() {}

        static void print() {
            System.out.println("here");
        }
    }

    /** Breaks: values are immutable. */
    public static final class Changeable {
        private int count;

        int next() {
            return ++count;
        }
    }

    /** Breaks: no catch-all class names. */
    public static final class AngleHelper {
        private AngleHelper() {}
    }

    /** Breaks: what every kind must answer is asked of the type. */
    public static final class TypeTaker {
        private TypeTaker() {}

        static boolean isGuided(Guiding guiding) {
            return guiding instanceof Guiding.Guided;
        }
    }
}
