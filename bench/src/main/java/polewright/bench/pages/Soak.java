package polewright.bench.pages;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import polewright.bench.frames.GuideEvening;
import polewright.bench.frames.Saving;
import polewright.bench.frames.Spread;
import polewright.bench.frames.Verdict;

/**
 * {@code polewright serve --share --frames} over hours, as a person starts it: a paired phone and the laptop follow
 * the first page, a frame comes every 10 s (saved in the watched folder and sent by a page, alternately), and the
 * network of one or the other is cut now and then. Every minute a full collection is requested, and what remains is
 * printed.
 */
public final class Soak {
    private static final int USUAL_MINUTES = 60;
    private static final int WARM_UP_MINUTES = 10;
    private static final int SECONDS_PER_MINUTE = 60;
    private static final int BETWEEN_FRAMES_SECONDS = 10;
    private static final int BETWEEN_CUTS_SECONDS = 47;
    private static final int LONGEST_CUT_SECONDS = 12;
    private static final int IDLE_SECONDS = 60;
    private static final int USERS = 10;
    private static final int BETWEEN_CROWDS_MINUTES = 5;
    private static final int RENDERED = 24;
    private static final double MOST_IDLE_PERCENT = 1;
    private static final double ONE_USER_MILLIS = 100;
    private static final double TEN_USERS_MILLIS = 500;
    // The growth of the log itself, and the heap's granularity.
    private static final double NO_GROWTH_MIB = 4;
    private static final double NO_GROWTH_SHARE = 0.05;
    private static final double NO_SLOPE_MIB_PER_MINUTE = 0.2;
    private static final List<String> PAGES = List.of(
            "/",
            "/ground",
            "/work",
            "/sightings",
            "/sightings/drift",
            "/frames",
            "/fix",
            "/tonight",
            "/pointing",
            "/nights",
            "/nights/seasons",
            "/rig",
            "/practice",
            "/devices");
    private static final Pattern OTHER_ADDRESS = Pattern.compile("(?m)^  http://([0-9.]+):\\d+/");
    private static final Pattern CODE = Pattern.compile("type the code ([A-Z0-9 -]+),");

    private final ServerRun server;
    private final Path captures;
    private final int minutes;
    private final RandomGenerator random = RandomGenerator.of("L64X128MixRandom");
    private final PageTimes alone = new PageTimes("one user", ONE_USER_MILLIS);
    private final PageTimes inACrowd = new PageTimes("ten users", TEN_USERS_MILLIS);
    private final List<ServerFigures> figures = new ArrayList<>();
    private final AtomicLong saved = new AtomicLong();
    private final AtomicLong sent = new AtomicLong();
    private final AtomicLong notTaken = new AtomicLong();

    private Soak(ServerRun server, Path captures, int minutes) {
        this.server = server;
        this.captures = captures;
        this.minutes = minutes;
    }

    /** The launcher, and an empty folder; {@code --minutes N}. */
    public static void main(String[] args) throws Exception {
        // Before the client is loaded: a device behind its own network still uses its usual name for the server.
        System.setProperty("jdk.httpclient.allowRestrictedHeaders", "host");
        Path folder = Path.of(args[1]);
        int minutes = args.length > 3 && args[2].equals("--minutes") ? Integer.parseInt(args[3]) : USUAL_MINUTES;
        Path captures = Files.createDirectory(folder.resolve("captures"));
        List<byte[]> frames = GuideEvening.rendered(RENDERED);
        int status;
        try (ServerRun server = ServerRun.begin(Path.of(args[0]), folder, "--share", "--frames", captures.toString())) {
            status = new Soak(server, captures, minutes).run(frames);
        }
        System.exit(status);
    }

    private int run(List<byte[]> frames) throws Exception {
        String laptopHost = "127.0.0.1:" + server.port();
        Optional<String> address = server.printed(OTHER_ADDRESS);
        String phoneAddress = address.orElse("127.0.0.1");
        if (address.isEmpty()) {
            System.out.println("This machine is in no network: the phone comes in as the laptop does.");
        }
        Verdict verdict = new Verdict();
        try (BreakingNetwork cable = BreakingNetwork.to("127.0.0.1", server.port());
                BreakingNetwork wifi = BreakingNetwork.to(phoneAddress, server.port())) {
            SoakDevice laptop = new SoakDevice(cable.port(), laptopHost);
            SoakDevice phone = new SoakDevice(wifi.port(), phoneAddress + ":" + server.port());
            if (address.isPresent()) {
                phone.pair(server.printed(CODE).orElseThrow());
            }
            SoakDevice reader = new SoakDevice(server.port(), laptopHost);
            laptop.follow();
            phone.follow();
            warmUp(reader);
            printIdle("before the first frame");
            Thread work = new Thread(() -> disturb(List.of(cable, wifi), frames, phone), "frames and cuts");
            work.setDaemon(true);
            work.start();
            for (int minute = 1; minute <= minutes; minute++) {
                minute(minute, reader, laptopHost);
            }
            work.interrupt();
            work.join();
            Thread.sleep(SECONDS_PER_MINUTE * 1000L / 4);
            double idle = printIdle("after the last frame");
            System.out.println("phone: " + phone.inWords());
            System.out.println("laptop: " + laptop.inWords());
            System.out.printf(
                    Locale.ROOT, "frames: %d saved, %d sent, %d not taken%n", saved.get(), sent.get(), notTaken.get());
            verdict.require(server.isRunning(), "the server runs");
            verdict.require(notTaken.get() == 0, "every frame that was sent was taken");
            verdict.require(idle < MOST_IDLE_PERCENT, "idle, two pages open: under 1 % of a core");
            alone.judge(verdict, PAGES);
            inACrowd.judge(verdict, PAGES);
            judgeGrowth(verdict, "live", ServerFigures::live);
            judgeGrowth(verdict, "committed", ServerFigures::committed);
            judgeGrowth(verdict, "resident", ServerFigures::resident);
            judgeSlope(verdict);
        }
        return verdict.status();
    }

    /** First-time costs are not what is measured. */
    private static void warmUp(SoakDevice reader) throws IOException, InterruptedException {
        for (int round = 0; round < 20; round++) {
            for (String page : PAGES) {
                reader.millis(page);
            }
        }
    }

    private double printIdle(String when) throws IOException, InterruptedException {
        double before = ServerFigures.processorSeconds(server.pid());
        Thread.sleep(IDLE_SECONDS * 1000L);
        double percent = 100 * (ServerFigures.processorSeconds(server.pid()) - before) / IDLE_SECONDS;
        System.out.printf(Locale.ROOT, "idle %s: %.2f %% of a core%n", when, percent);
        return percent;
    }

    private void minute(int minute, SoakDevice reader, String host) throws Exception {
        long end = System.nanoTime() + SECONDS_PER_MINUTE * 1_000_000_000L;
        for (int round = 0; round < 2; round++) {
            for (String page : PAGES) {
                alone.add(page, reader.millis(page));
            }
        }
        if (minute % BETWEEN_CROWDS_MINUTES == 0 || minute == minutes) {
            crowd(host);
        }
        ServerFigures now = ServerFigures.of(server.pid());
        figures.add(now);
        System.out.printf(Locale.ROOT, "minute %2d: %s%n", minute, now.inWords());
        long left = end - System.nanoTime();
        if (left > 0) {
            Thread.sleep(left / 1_000_000);
        }
    }

    /** Ten users who go through all pages at once. */
    private void crowd(String host) throws InterruptedException, ExecutionException {
        ExecutorService users = Executors.newFixedThreadPool(USERS);
        List<Future<?>> visits = new ArrayList<>();
        for (int user = 0; user < USERS; user++) {
            int first = user;
            visits.add(users.submit(() -> {
                SoakDevice device = new SoakDevice(server.port(), host);
                for (int i = 0; i < PAGES.size(); i++) {
                    String page = PAGES.get((first + i) % PAGES.size());
                    inACrowd.add(page, device.millis(page));
                }
                return null;
            }));
        }
        for (Future<?> visit : visits) {
            visit.get();
        }
        users.shutdown();
    }

    private void disturb(List<BreakingNetwork> networks, List<byte[]> frames, SoakDevice phone) {
        int number = 0;
        try {
            for (long second = 0; ; second++) {
                if (second % BETWEEN_FRAMES_SECONDS == 0) {
                    byte[] frame = taken(frames.get(number % frames.size()), number);
                    if (number % 2 == 0) {
                        save(frame, number);
                    } else {
                        send(phone, frame, number);
                    }
                    number++;
                }
                if (second % BETWEEN_CUTS_SECONDS == BETWEEN_CUTS_SECONDS - 1) {
                    BreakingNetwork network = networks.get(random.nextInt(networks.size()));
                    network.cut();
                    Thread.sleep(1000L * random.nextInt(1, LONGEST_CUT_SECONDS));
                    network.restore();
                }
                Thread.sleep(1000);
            }
        } catch (InterruptedException over) {
            networks.forEach(BreakingNetwork::restore);
        } catch (IOException broken) {
            throw new IllegalStateException(broken);
        }
    }

    /** The frame with a capture time of its own: a frame seen before would be ignored. */
    private static byte[] taken(byte[] frame, int number) {
        String head = new String(frame, 0, 2880, StandardCharsets.US_ASCII);
        int at = head.indexOf("DATE-OBS= '") + "DATE-OBS= '".length();
        byte[] another = frame.clone();
        byte[] time = Instant.parse("2026-11-25T20:00:00Z")
                .plusSeconds((long) number * BETWEEN_FRAMES_SECONDS)
                .toString()
                .substring(0, 19)
                .getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(time, 0, another, at, time.length);
        return another;
    }

    private void save(byte[] frame, int number) throws IOException {
        Saving saving = number % 4 == 0 ? Saving.WRITTEN : Saving.RENAMED;
        saving.save(frame, captures.resolve(String.format(Locale.ROOT, "soak-%05d.fits", number)));
        saved.incrementAndGet();
    }

    /**
     * Sent again with the same key when the network was cut or the previous frame is still being processed, as a
     * person at the page does.
     */
    private void send(SoakDevice phone, byte[] frame, int number) throws InterruptedException {
        String name = String.format(Locale.ROOT, "sent-%05d.fits", number);
        String key = String.format(Locale.ROOT, "%032x", 0xf00dL + number);
        for (int tries = 0; tries < 20; tries++) {
            try {
                if (phone.upload(name, frame, key) == 303) {
                    sent.incrementAndGet();
                    return;
                }
            } catch (IOException cutOff) {
                // Try again.
            }
            Thread.sleep(1000);
        }
        notTaken.incrementAndGet();
    }

    /** Compares the last third of the time after the warm-up with the first third. */
    private void judgeGrowth(Verdict verdict, String what, ToDoubleFunction<ServerFigures> figure) {
        List<ServerFigures> warm = figures.subList(Math.min(WARM_UP_MINUTES, figures.size() / 2), figures.size());
        int third = Math.max(1, warm.size() / 3);
        double first = median(warm.subList(0, third), figure);
        double last = median(warm.subList(warm.size() - third, warm.size()), figure);
        verdict.require(
                last - first < Math.max(NO_GROWTH_MIB, NO_GROWTH_SHARE * first),
                String.format(
                        Locale.ROOT, "%s does not grow once warm: %.1f MiB at first, %.1f at last", what, first, last));
    }

    /**
     * Growth from warming up slows down; a leak continues. A leak in the heap shows in the live objects, so the rest is
     * judged here.
     */
    private void judgeSlope(Verdict verdict) {
        List<ServerFigures> half = figures.subList(figures.size() / 2, figures.size());
        double slope = slope(half, ServerFigures::outsideHeap);
        verdict.require(
                slope < NO_SLOPE_MIB_PER_MINUTE,
                String.format(
                        Locale.ROOT,
                        "outside the heap, over the last %d minutes: %+.2f MiB a minute, under %.1f (code and classes: %+.2f;"
                                + " all that is resident: %+.2f)",
                        half.size(),
                        slope,
                        NO_SLOPE_MIB_PER_MINUTE,
                        slope(half, ServerFigures::code),
                        slope(half, ServerFigures::resident)));
    }

    /** The median of the slopes between all pairs: a minute in which the compiler was at work has little weight. */
    private static double slope(List<ServerFigures> minutes, ToDoubleFunction<ServerFigures> figure) {
        return new Spread(IntStream.range(0, minutes.size())
                        .boxed()
                        .flatMapToDouble(i -> IntStream.range(0, i)
                                .mapToDouble(k ->
                                        (figure.applyAsDouble(minutes.get(i)) - figure.applyAsDouble(minutes.get(k)))
                                                / (i - k))))
                .median();
    }

    private static double median(List<ServerFigures> some, ToDoubleFunction<ServerFigures> figure) {
        return new Spread(some.stream().mapToDouble(figure)).median();
    }
}
