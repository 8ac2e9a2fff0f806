package polewright.bench.pages;

import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.bench.frames.Spread;
import polewright.bench.frames.Verdict;

/** From a press on one device until the page of the other shows the change, alternately on a phone and a laptop. */
public final class TwoDevices {
    private static final int ROUNDS = 20;
    private static final double TARGET_MILLIS = 1000;
    private static final String IS_NEW = "before => document.querySelector('main').textContent !== before";

    private TwoDevices() {}

    /** The launcher, and an empty folder. */
    public static void main(String[] args) throws IOException, InterruptedException {
        System.exit(run(Path.of(args[0]), Path.of(args[1])));
    }

    private static int run(Path launcher, Path folder) throws IOException, InterruptedException {
        Verdict verdict = new Verdict();
        try (Serving serving = Serving.begin(launcher, folder)) {
            Page phone = serving.device(360, 740);
            Page laptop = serving.device(1440, 900);
            List<Double> toLaptop = new ArrayList<>();
            List<Double> toPhone = new ArrayList<>();
            for (int round = 0; round < ROUNDS; round++) {
                toLaptop.add(millis(serving, phone, laptop, round % 2 == 0 ? "12" : "2"));
                toPhone.add(millis(serving, laptop, phone, round % 2 == 0 ? "7" : "-3"));
            }
            verdict.require(report("phone to laptop", toLaptop) <= TARGET_MILLIS, "the laptop follows within a second");
            verdict.require(report("laptop to phone", toPhone) <= TARGET_MILLIS, "the phone follows within a second");
        }
        return verdict.status();
    }

    /** A compass is read on one; the other shows the fix, which the reading moves. */
    private static double millis(Serving serving, Page pressed, Page looked, String degrees) {
        looked.navigate(serving.address() + "fix");
        pressed.navigate(serving.address() + "sightings/compass");
        pressed.locator("input[name=bearing]").fill(degrees);
        String before = looked.locator("main").textContent();
        long press = System.nanoTime();
        pressed.locator(".entry button.main").click();
        looked.waitForFunction(IS_NEW, before);
        return (System.nanoTime() - press) / 1e6;
    }

    /** Prints the 95th percentile. */
    private static double report(String way, List<Double> millis) {
        Spread spread = new Spread(millis.stream().mapToDouble(each -> each));
        System.out.printf(Locale.ROOT, "%s: %s%n", way, spread.inWords("ms"));
        return spread.quantile(0.95);
    }
}
