package polewright.bench.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import polewright.bench.frames.Spread;
import polewright.bench.frames.Verdict;

/** How long each page took for one kind of user, and how long it may take. Thread-safe. */
final class PageTimes {
    private static final double SHARE = 0.95;

    private final String who;
    private final double mostMillis;
    private final Map<String, List<Double>> millis = new ConcurrentHashMap<>();

    /** @param mostMillis the limit for 95 % of each page's responses */
    PageTimes(String who, double mostMillis) {
        this.who = who;
        this.mostMillis = mostMillis;
    }

    void add(String page, double took) {
        List<Double> times = millis.computeIfAbsent(page, first -> new ArrayList<>());
        synchronized (times) {
            times.add(took);
        }
    }

    /** Prints a table, one line per page in the given order, and the criterion. */
    void judge(Verdict verdict, List<String> pages) {
        System.out.printf(
                Locale.ROOT,
                "%n%-17s %8s %8s %8s %8s   (ms, target: 95 %% under %.0f)%n",
                who,
                "median",
                "95 %",
                "largest",
                "answers",
                mostMillis);
        boolean met = true;
        for (String page : pages) {
            Spread spread = spread(page);
            boolean isMet = spread.quantile(SHARE) < mostMillis;
            met &= isMet;
            System.out.printf(
                    Locale.ROOT,
                    "%-17s %8.0f %8.0f %8.0f %8d%s%n",
                    page,
                    spread.median(),
                    spread.quantile(SHARE),
                    spread.most(),
                    spread.count(),
                    isMet ? "" : "   over");
        }
        verdict.require(
                met, String.format(Locale.ROOT, "%s: 95 %% of each page's answers in under %.0f ms", who, mostMillis));
    }

    private Spread spread(String page) {
        List<Double> times = millis.getOrDefault(page, List.of());
        synchronized (times) {
            return new Spread(times.stream().mapToDouble(each -> each));
        }
    }
}
