package polewright.bench.frames;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.camera.Drive;
import polewright.drawing.Palette;
import polewright.drawing.frame.FrameDrawing;
import polewright.drawing.frame.FrameScene;
import polewright.mount.rig.Rig;
import polewright.operations.Pause;
import polewright.operations.Workbench;
import polewright.operations.camera.FrameClues;
import polewright.operations.picture.Tint;
import polewright.operations.watch.BackgroundWatch;
import polewright.operations.watch.FrameFolder;
import polewright.operations.watch.FrameWatch;
import polewright.operations.watch.LiveView;
import polewright.session.NightState;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.store.NightLog;

/**
 * From the moment that a guide frame of 2 megapixels is in a watched folder, closed or renamed there, until its stars
 * are known and its picture and overlay are drawn. A real folder is watched by the program's own thread, as for a
 * page: right ascension is turned until the axis is known, then the screws are.
 */
public final class LiveFrames {
    private static final Site SITE = TimedFrames.SITE;
    private static final int WARM_UP = 30;
    private static final int ROUNDS = 30;
    private static final double TARGET_MILLIS = 400;

    private final Path folder;
    private final Clock clock = Clock.systemUTC();
    private final BlockingQueue<Ready> ready = new LinkedBlockingQueue<>();

    private LiveFrames(Path folder) {
        this.folder = folder;
    }

    /** A frame that is ready for a page, and when. */
    private record Ready(long nanos, LiveView.Shot shot, int pictureBytes) {}

    /** An empty folder for frames and log. */
    public static void main(String[] args) throws IOException, InterruptedException {
        System.exit(new LiveFrames(Path.of(args[0])).run());
    }

    private int run() throws IOException, InterruptedException {
        Path captures = Files.createDirectory(folder.resolve("captures"));
        Path log = folder.resolve("nights.sqlite");
        StringWriter faults = new StringWriter();
        Workbench workbench =
                new Workbench(clock, Map.of(), new PrintWriter(faults), new PrintWriter(faults), false, Pause.REAL);
        LiveView view = new LiveView(SITE, this::draw);
        List<byte[]> frames = GuideEvening.rendered(WARM_UP + 2 * ROUNDS);
        FrameWatch watch = FrameWatch.of(
                FrameFolder.of(captures, workbench.clock(), false),
                new FrameWatch.Task(false, FrameClues.NONE.at(SITE), Drive.TRACKING),
                begun(log),
                () -> NightLog.open(log),
                workbench,
                view);
        Verdict verdict = new Verdict();
        try (BackgroundWatch running = BackgroundWatch.start(watch, view, workbench)) {
            for (int i = 0; i < WARM_UP; i++) {
                millis(captures, i, frames.get(i), i % 2 == 0 ? Saving.WRITTEN : Saving.RENAMED);
            }
            int number = WARM_UP;
            for (Saving saving : Saving.values()) {
                List<Double> millis = new ArrayList<>();
                for (int i = 0; i < ROUNDS; i++) {
                    millis.add(millis(captures, number, frames.get(number), saving));
                    number++;
                }
                tell(saving, millis);
            }
            verdict.require(running.isRunning(), "the watch has gone through all frames");
        }
        return verdict.status();
    }

    private void tell(Saving saving, List<Double> millis) {
        List<Double> sorted = millis.stream().sorted().toList();
        double median = new Spread(millis.stream().mapToDouble(m -> m)).median();
        double ninetieth = sorted.get((int) Math.ceil(0.9 * sorted.size()) - 1);
        System.out.printf(
                Locale.ROOT,
                "2 Mpx, %-26s median %4.0f ms, 90th percentile %4.0f ms (target %.0f%s)%n",
                saving.words(),
                median,
                ninetieth,
                TARGET_MILLIS,
                ninetieth <= TARGET_MILLIS ? "" : "!");
    }

    private NightState begun(Path log) {
        try (NightLog opened = NightLog.open(log)) {
            NightEvent.Begun begun = new NightEvent.Begun(
                    "Larkfell",
                    SITE,
                    Weather.standardAt(SITE.heightMetres()),
                    Rig.typicalForkOnWedge(),
                    DiscAllowance.VISUAL);
            var night = opened.begin(begun, clock.instant());
            List<LoggedEvent> events = opened.events(night);
            return NightState.of(events);
        }
    }

    /** What a page does with a frame: its picture and the overlay, in the dark palette. */
    private void draw(LiveView.Shot shot) {
        FrameScene frame = shot.frame()
                .orElseThrow(() -> new IllegalStateException(shot.refusal().orElse("no frame")));
        int bytes = shot.picture().png(Tint.RED).length;
        bytes += FrameDrawing.svg(frame, Palette.DARK).length();
        ready.add(new Ready(System.nanoTime(), shot, bytes));
    }

    private double millis(Path captures, int number, byte[] content, Saving saving)
            throws IOException, InterruptedException {
        Path file = captures.resolve(String.format(Locale.ROOT, "guide-%03d.fits", number));
        long closed = saving.save(content, file);
        Ready shown = ready.poll(60, TimeUnit.SECONDS);
        if (shown == null || !shown.shot().name().equals(String.valueOf(file.getFileName()))) {
            throw new IllegalStateException(file + " was not shown");
        }
        return (shown.nanos() - closed) / 1e6;
    }
}
