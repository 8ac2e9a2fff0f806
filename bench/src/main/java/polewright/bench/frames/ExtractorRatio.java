package polewright.bench.frames;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.image.decode.DecodeOptions;
import polewright.image.decode.FrameReader;
import polewright.image.star.SearchSettings;
import polewright.image.star.StarFinder;
import polewright.image.star.StarList;
import polewright.mount.AxisPointing;
import polewright.simulation.camera.CameraAim;
import polewright.simulation.camera.CameraPath;
import polewright.simulation.camera.Exposure;
import polewright.simulation.camera.FrameRenderer;
import polewright.simulation.camera.RenderedFrame;
import polewright.simulation.camera.SimulatedCamera;
import polewright.simulation.camera.SkyConditions;
import polewright.simulation.camera.TrueStar;
import polewright.simulation.fits.FitsFile;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.StarAtlas;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/**
 * Compares star detection with a general-purpose star extractor, a separate program from Debian's packages, on the
 * same FITS files: time, stars found, and how many of the stars above the detection limit were found.
 *
 * <p>Ours: from the file to the star list, warmed up, in this process, on all processors. Theirs: the whole process
 * with its default settings, from the file to a list of windowed centroids; it has no Java to start.
 */
public final class ExtractorRatio {
    private static final String PROGRAM = "source-extractor";
    private static final Path SETTINGS = Path.of("/usr/share/source-extractor");
    private static final int WARM_UP = 10;
    // Where the same code has just run.
    private static final int WARM_UP_AGAIN = 2;
    private static final int ROUNDS = 7;
    private static final double STANDING_OUT = 10;
    private static final SearchSettings EVERY_STAR = new SearchSettings(SearchSettings.USUAL.threshold(), 1_000_000);
    private static final double FAINTEST_INVENTED = 17;
    private static final Site SITE = Site.ofDegrees(54.60, -2.90, 240);
    private static final Instant AT = Instant.parse("2026-11-25T20:00:00Z");

    private final FrameRenderer renderer =
            new FrameRenderer(StarAtlas.bundled()).withInventedStarsTo(FAINTEST_INVENTED);
    private final Path folder;

    private ExtractorRatio(Path folder) {
        this.folder = folder;
    }

    /** The result of one of them for a frame. */
    private record Result(double millis, List<Vector2D> places) {}

    /**
     * A star list compared with the truth.
     *
     * @param complete share of the stars above the limit that it contains
     * @param spurious number of its positions without any star, however faint
     */
    private record Score(double complete, int spurious) {
        static Score of(Result result, List<TrueStar> standingOut, List<TrueStar> any, double reach) {
            PlaceGrid listed = new PlaceGrid(result.places(), reach);
            PlaceGrid real = new PlaceGrid(any.stream().map(Score::place).toList(), reach);
            long complete = standingOut.stream()
                    .filter(star -> listed.hasNear(place(star)))
                    .count();
            long spurious =
                    result.places().stream().filter(p -> !real.hasNear(p)).count();
            return new Score(complete / (double) standingOut.size(), (int) spurious);
        }

        private static Vector2D place(TrueStar star) {
            return new Vector2D(star.x(), star.y());
        }
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("star-extractor-ratio");
        try {
            ExtractorRatio ratio = new ExtractorRatio(folder);
            System.out.println("                                          milliseconds            stars found"
                    + "        of stars over S/N 10     no star there");
            System.out.println("                                       ours  theirs  ratio     ours  theirs  ratio"
                    + "       ours   theirs    ours theirs");
            ratio.compare("2 Mpx guide frame", SimulatedCamera.guideCamera(), SkyConditions.COUNTRY, 3);
            ratio.compare("2 Mpx under a town's sky", SimulatedCamera.guideCamera(), SkyConditions.TOWN, 3);
            ratio.compare("24 Mpx, main tube", SimulatedCamera.mainTubeCamera(), SkyConditions.COUNTRY, 5);
            ratio.compare("24 Mpx, wide lens", SimulatedCamera.wideLens(), SkyConditions.COUNTRY, 5);
        } finally {
            try (var files = Files.list(folder)) {
                for (Path file : files.toList()) {
                    Files.delete(file);
                }
            }
            Files.delete(folder);
        }
    }

    private void compare(String what, SimulatedCamera camera, SkyConditions sky, int seconds)
            throws IOException, InterruptedException {
        Exposure exposure = new Exposure(
                camera,
                CameraPath.tracking(
                        CameraAim.at(
                                RefractedDirection.of(Angle.ofDegrees(80), Angle.ofDegrees(60)), Angle.ofDegrees(20)),
                        AxisPointing.atPole(SITE).northernEnd(SITE)),
                SITE,
                Weather.standardAt(SITE.heightMetres()),
                sky,
                AT,
                Duration.ofSeconds(seconds));
        RandomGenerator random = new SplittableRandom(1);
        RenderedFrame rendered = renderer.render(exposure, random);
        Path file = folder.resolve("frame.fits");
        Files.write(file, FitsFile.of(rendered.frame()));
        List<TrueStar> standingOut = StarTruth.of(exposure, rendered.truth()).all(STANDING_OUT);
        List<TrueStar> any = rendered.truth().stars();
        double reach = Math.max(2, Pixels.of(exposure).fwhmPixels());

        Result theirs = theirs(file);
        line(what + ", as used", ours(file, SearchSettings.USUAL, WARM_UP), theirs, standingOut, any, reach);
        line(what + ", all stars", ours(file, EVERY_STAR, WARM_UP_AGAIN), theirs, standingOut, any, reach);
    }

    private static void line(
            String what, Result ours, Result theirs, List<TrueStar> standingOut, List<TrueStar> any, double reach) {
        Score oursTrue = Score.of(ours, standingOut, any, reach);
        Score theirsTrue = Score.of(theirs, standingOut, any, reach);
        System.out.printf(
                Locale.ROOT,
                "%-36s %6.0f %7.0f %6.2f   %6d %7d %6.2f   %6.1f %% %6.1f %%   %5d %6d%n",
                what,
                ours.millis(),
                theirs.millis(),
                ours.millis() / theirs.millis(),
                ours.places().size(),
                theirs.places().size(),
                ours.places().size() / (double) theirs.places().size(),
                100 * oursTrue.complete(),
                100 * theirsTrue.complete(),
                oursTrue.spurious(),
                theirsTrue.spurious());
    }

    private static Result ours(Path file, SearchSettings settings, int warmUp) throws IOException {
        StarList found = find(file, settings);
        for (int i = 0; i < warmUp; i++) {
            found = find(file, settings);
        }
        List<Double> millis = new ArrayList<>();
        for (int i = 0; i < ROUNDS; i++) {
            long start = System.nanoTime();
            find(file, settings);
            millis.add((System.nanoTime() - start) / 1e6);
        }
        return new Result(
                new Spread(millis.stream().mapToDouble(t -> t)).median(),
                found.stars().stream().map(s -> new Vector2D(s.x(), s.y())).toList());
    }

    private static StarList find(Path file, SearchSettings settings) throws IOException {
        return StarFinder.find(
                FrameReader.read(Files.readAllBytes(file), file.toString(), DecodeOptions.DEFAULT), settings);
    }

    private Result theirs(Path file) throws IOException, InterruptedException {
        Path columns = folder.resolve("columns");
        Files.writeString(columns, "XWIN_IMAGE\nYWIN_IMAGE\nFLUX_AUTO\nFWHM_IMAGE\nELONGATION\nFLAGS\n");
        Path list = folder.resolve("list");
        List<Double> millis = new ArrayList<>();
        for (int i = 0; i < ROUNDS; i++) {
            long start = System.nanoTime();
            Process process = new ProcessBuilder(
                            PROGRAM,
                            file.toString(),
                            "-c",
                            SETTINGS.resolve("default.sex").toString(),
                            "-FILTER_NAME",
                            SETTINGS.resolve("default.conv").toString(),
                            "-STARNNW_NAME",
                            SETTINGS.resolve("default.nnw").toString(),
                            "-PARAMETERS_NAME",
                            columns.toString(),
                            "-CATALOG_NAME",
                            list.toString(),
                            "-VERBOSE_TYPE",
                            "QUIET")
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            int status = process.waitFor();
            millis.add((System.nanoTime() - start) / 1e6);
            if (status != 0) {
                throw new IOException(PROGRAM + " ended with status " + status);
            }
        }
        List<Vector2D> places = Files.readAllLines(list).stream()
                .filter(line -> !line.startsWith("#"))
                .map(line -> line.trim().split("\\s+"))
                // There, the centre of the first pixel is (1, 1).
                .map(row -> new Vector2D(Double.parseDouble(row[0]) - 1, Double.parseDouble(row[1]) - 1))
                .toList();
        return new Result(new Spread(millis.stream().mapToDouble(t -> t)).median(), places);
    }
}
