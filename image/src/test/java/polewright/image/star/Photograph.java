package polewright.image.star;

import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Assumptions;
import polewright.image.Frame;
import polewright.image.FrameFacts;

/**
 * A photograph of the real sky, with the stars that others matched to a catalogue. The files are outside the project:
 * {@code ../shared/frames} from its root.
 *
 * @param frame its pixels, colours averaged
 * @param matched positions of the 40 brightest matched stars, x and y
 */
record Photograph(Frame frame, List<Place> matched) {
    private static final Pattern STAR = Pattern.compile("\"x\":\\s*([\\d.]+),\\s*\"y\":\\s*([\\d.]+)");

    /** Skips the test, with a message, if the photographs are missing. */
    static Photograph named(String image) throws IOException {
        Optional<Path> found = folder();
        Assumptions.assumeTrue(found.isPresent(), "no photographs in ../shared/frames: this test is skipped");
        Path folder = found.orElseThrow();
        BufferedImage picture = ImageIO.read(folder.resolve(image).toFile());
        Raster raster = picture.getRaster();
        int width = raster.getWidth();
        int height = raster.getHeight();
        int colours = Math.min(3, raster.getNumBands());
        float[] pixels = new float[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                for (int c = 0; c < colours; c++) {
                    pixels[y * width + x] += raster.getSampleFloat(x, y, c) / colours;
                }
            }
        }
        float full = (1 << raster.getSampleModel().getSampleSize(0)) - 1;
        String json = Files.readString(folder.resolve(image.replaceFirst("\\.\\w+$", ".json")));
        List<Place> matched = new ArrayList<>();
        Matcher stars = STAR.matcher(json.substring(json.indexOf("matched_stars_brightest40")));
        while (stars.find()) {
            matched.add(new Place(Double.parseDouble(stars.group(1)), Double.parseDouble(stars.group(2))));
        }
        return new Photograph(new Frame(width, height, pixels, full, FrameFacts.NONE), matched);
    }

    private static Optional<Path> folder() {
        return Stream.iterate(Path.of("").toAbsolutePath(), Objects::nonNull, Path::getParent)
                .map(p -> p.resolve("shared").resolve("frames"))
                .filter(Files::isDirectory)
                .findFirst();
    }

    /**
     * A matched star's position.
     *
     * @param x column
     * @param y row
     */
    record Place(double x, double y) {
        double distanceTo(FoundStar star) {
            return Math.hypot(star.x() - x, star.y() - y);
        }

        boolean isAmong(List<FoundStar> stars, double within) {
            return stars.stream().anyMatch(s -> distanceTo(s) < within);
        }
    }
}
