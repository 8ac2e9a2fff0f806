package polewright.bench.frames;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * From the moment that a guide frame of 2 megapixels is in the folder that {@code polewright serve --frames} watches until
 * a page in Chromium shows it with its stars: the program as a person starts it, and a browser beside it on the same
 * machine.
 */
public final class PageFrames {
    private static final int WARM_UP = 30;
    private static final int ROUNDS = 30;
    private static final double TARGET_MILLIS = 400;
    private static final Pattern ADDRESS = Pattern.compile("http://127\\.0\\.0\\.1:\\d+/");
    // The picture is drawn, its overlay lies on it, and the line beneath tells the file's name.
    private static final String SHOWN = """
            name => {
              const light = document.querySelector('.light img');
              const overlay = document.querySelector('.light svg');
              return light && light.complete && light.naturalWidth > 0 && overlay
                && document.querySelector('#frame').textContent.includes(name);
            }
            """;

    private PageFrames() {}

    /** The launcher, and an empty folder. */
    public static void main(String[] args) throws IOException, InterruptedException {
        System.exit(run(Path.of(args[0]), Path.of(args[1])));
    }

    private static int run(Path launcher, Path folder) throws IOException, InterruptedException {
        Path captures = Files.createDirectory(folder.resolve("captures"));
        List<byte[]> frames = GuideEvening.rendered(WARM_UP + 2 * ROUNDS);
        started(folder, launcher, "begin", "--site", "54.60,-2.90,240").onExit().join();
        Process server = started(folder, launcher, "serve", "--port", "0", "--frames", captures.toString());
        Verdict verdict = new Verdict();
        try (Playwright playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")))) {
            Browser browser = playwright
                    .chromium()
                    .launch(new BrowserType.LaunchOptions()
                            .setExecutablePath(Path.of("/usr/bin/chromium"))
                            .setArgs(List.of("--no-sandbox", "--disable-gpu")));
            Page page = browser.newPage(new Browser.NewPageOptions().setViewportSize(360, 740));
            page.navigate(address(folder.resolve("serve")) + "frames");
            List<Double> first = millis(page, captures, frames, 0, 1, Saving.RENAMED);
            System.out.printf(Locale.ROOT, "first frame of the night, nothing known: %.0f ms%n", first.get(0));
            millis(page, captures, frames, 1, WARM_UP, Saving.RENAMED);
            int number = WARM_UP;
            for (Saving saving : Saving.values()) {
                List<Double> millis = millis(page, captures, frames, number, number + ROUNDS, saving);
                number += ROUNDS;
                verdict.require(tell(saving, millis) <= TARGET_MILLIS, "on the page in 400 ms, 9 times in 10");
            }
        } finally {
            server.destroy();
        }
        return verdict.status();
    }

    private static Process started(Path folder, Path launcher, String... words) throws IOException {
        List<String> command = new ArrayList<>(List.of(launcher.toString()));
        command.addAll(List.of(words));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve(words[0]).toFile())
                .redirectInput(new File("/dev/null"));
        builder.environment()
                .put("POLEWRIGHT_LOG", folder.resolve("nights.sqlite").toString());
        builder.environment().put("XDG_DATA_HOME", folder.toString());
        return builder.start();
    }

    /** As the server prints it first. */
    private static String address(Path printed) throws IOException, InterruptedException {
        for (int tries = 0; tries < 100; tries++) {
            Matcher address = ADDRESS.matcher(Files.readString(printed, StandardCharsets.UTF_8));
            if (address.find()) {
                return address.group();
            }
            Thread.sleep(100);
        }
        throw new IllegalStateException("the server does not start: " + Files.readString(printed));
    }

    private static List<Double> millis(Page page, Path captures, List<byte[]> frames, int from, int to, Saving saving)
            throws IOException {
        List<Double> millis = new ArrayList<>();
        for (int i = from; i < to; i++) {
            String name = String.format(Locale.ROOT, "guide-%03d.fits", i);
            long whole = saving.save(frames.get(i), captures.resolve(name));
            page.waitForFunction(SHOWN, name);
            millis.add((System.nanoTime() - whole) / 1e6);
        }
        return millis;
    }

    /** The 90th percentile. */
    private static double tell(Saving saving, List<Double> millis) {
        List<Double> sorted = millis.stream().sorted().toList();
        double ninetieth = sorted.get((int) Math.ceil(0.9 * sorted.size()) - 1);
        System.out.printf(
                Locale.ROOT,
                "2 Mpx, on the page, %-26s median %4.0f ms, 90th percentile %4.0f ms (target %.0f%s)%n",
                saving.words(),
                new Spread(millis.stream().mapToDouble(m -> m)).median(),
                ninetieth,
                TARGET_MILLIS,
                ninetieth <= TARGET_MILLIS ? "" : "!");
        return ninetieth;
    }
}
