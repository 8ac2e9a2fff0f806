package polewright.bench.pages;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The memory of a server process after a full collection, MiB.
 *
 * @param live objects in use
 * @param committed the heap that the process has taken from the system
 * @param resident all of its memory that is in RAM, as the system counts it (VmRSS)
 * @param outsideHeap the resident part outside the heap, where leaks are not found by a collection
 * @param code the machine code and classes in it, which grow as the program warms up
 */
record ServerFigures(double live, double committed, double resident, double outsideHeap, double code) {
    private static final Pattern SPACE = Pattern.compile("total (\\d+)K, used (\\d+)K");
    private static final Pattern GENERATION = Pattern.compile("used \\d+K \\[0x([0-9a-f]+),.* 0x([0-9a-f]+)\\)");
    // The columns of proc(5), smaps.
    private static final Pattern MAPPING = Pattern.compile("([0-9a-f]+)-[0-9a-f]+ ");
    private static final Pattern RESIDENT_SIZE = Pattern.compile("Rss: +(\\d+) kB");
    private static final Pattern CLASSES = Pattern.compile("Metaspace +used \\d+K, committed (\\d+)K");
    private static final Pattern COMPILED = Pattern.compile("CodeHeap .* used=(\\d+)Kb");
    private static final Pattern RESIDENT = Pattern.compile("VmRSS:\\s+(\\d+) kB");
    private static final double KIB_PER_MIB = 1024;
    // clock_t of Linux, which Java cannot ask for: sysconf(_SC_CLK_TCK) is 100 on every machine that runs this.
    private static final double TICKS_PER_SECOND = 100;

    /** Requests a full collection, then measures the process. */
    static ServerFigures of(long pid) throws IOException, InterruptedException {
        jcmd(pid, "GC.run");
        String heap = jcmd(pid, "GC.heap_info");
        double live = 0;
        double committed = 0;
        for (Matcher space = SPACE.matcher(heap); space.find(); ) {
            committed += Double.parseDouble(space.group(1)) / KIB_PER_MIB;
            live += Double.parseDouble(space.group(2)) / KIB_PER_MIB;
        }
        Matcher resident = RESIDENT.matcher(Files.readString(Path.of("/proc", Long.toString(pid), "status")));
        if (committed == 0 || !resident.find()) {
            throw new IllegalStateException("the server does not say what it holds: " + heap);
        }
        double outside = residentOutside(heap, Files.readAllLines(Path.of("/proc", Long.toString(pid), "smaps")));
        double code = sum(CLASSES, heap) + sum(COMPILED, jcmd(pid, "Compiler.codecache"));
        return new ServerFigures(live, committed, Double.parseDouble(resident.group(1)) / KIB_PER_MIB, outside, code);
    }

    private static long address(String hexadecimal) {
        return Long.parseUnsignedLong(hexadecimal, 16);
    }

    /**
     * Uses the addresses of the heap's generations: a mapping of the process is within one of them, or outside the
     * heap.
     */
    private static double residentOutside(String heap, List<String> smaps) {
        List<long[]> generations = GENERATION
                .matcher(heap)
                .results()
                .map(found -> new long[] {address(found.group(1)), address(found.group(2))})
                .toList();
        double kib = 0;
        boolean isOutside = true;
        for (String line : smaps) {
            Matcher mapping = MAPPING.matcher(line);
            Matcher held = RESIDENT_SIZE.matcher(line);
            if (mapping.lookingAt()) {
                long from = address(mapping.group(1));
                isOutside = generations.stream().noneMatch(range -> from >= range[0] && from < range[1]);
            } else if (held.lookingAt() && isOutside) {
                kib += Double.parseDouble(held.group(1));
            }
        }
        return kib / KIB_PER_MIB;
    }

    private static double sum(Pattern kib, String text) {
        return kib.matcher(text)
                        .results()
                        .mapToDouble(found -> Double.parseDouble(found.group(1)))
                        .sum()
                / KIB_PER_MIB;
    }

    /** Processor time since the process began, of all its threads, seconds. */
    static double processorSeconds(long pid) throws IOException {
        String all = Files.readString(Path.of("/proc", Long.toString(pid), "stat"));
        String[] afterName = all.substring(all.lastIndexOf(')') + 2).split(" ", -1);
        // Fields 14 and 15 of proc(5), the name being the second.
        return (Long.parseLong(afterName[11]) + Long.parseLong(afterName[12])) / TICKS_PER_SECOND;
    }

    private static String jcmd(long pid, String command) throws IOException, InterruptedException {
        Process asking = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "jcmd").toString(), Long.toString(pid), command)
                .redirectErrorStream(true)
                .start();
        String said = new String(asking.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (asking.waitFor() != 0) {
            throw new IllegalStateException(said);
        }
        return said;
    }

    String inWords() {
        return String.format(
                Locale.ROOT,
                "heap: live %6.1f, committed %6.1f; resident %6.1f, outside the heap %6.1f, code and classes %5.1f MiB",
                live,
                committed,
                resident,
                outsideHeap,
                code);
    }
}
