package polewright.bench.frames;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.Objects;
import java.util.SplittableRandom;
import polewright.sky.atlas.SkyCells;
import polewright.sky.atlas.StarAtlas;

/**
 * The sky at tonight's epoch, whereas the atlas is at epoch 2000: frames are rendered with this one and matched with
 * the atlas.
 *
 * <p>Every star whose motion the atlas does not have has moved in a random direction by an exponentially distributed
 * distance of 0.5″ on average, 0.5″ RMS in each coordinate: 0.019″ a year to the end of 2026 (common practice: stars
 * about V 11 move 0.01″ to 0.03″ a year). A few in a hundred have moved 2″. The stars keep their numbers.
 */
final class StrayedSky {
    private static final double MEAN_ARCSEC = 0.5;
    private static final long SEED = 2026;
    private static final int COUNTS_OF_HEADER = 3;
    private static final int DOUBLES_PER_BRIGHT_STAR = 7;
    private static final int STEPS = 1 << 16;
    private static final double STEP_ARCSEC = 3600.0 / STEPS;

    private StrayedSky() {}

    static StarAtlas ofAtlas() {
        try (InputStream in = Objects.requireNonNull(StarAtlas.class.getResourceAsStream("star-atlas.bin"))) {
            ByteBuffer file = ByteBuffer.wrap(in.readAllBytes());
            int counts = StarAtlas.MAGIC.length();
            int bright = file.getInt(counts);
            int cells = file.getInt(counts + Integer.BYTES);
            int sizes = counts + COUNTS_OF_HEADER * Integer.BYTES + bright * DOUBLES_PER_BRIGHT_STAR * Double.BYTES;
            int star = sizes + cells * Short.BYTES;
            SplittableRandom random = new SplittableRandom(SEED);
            for (int cell = 0; cell < cells; cell++) {
                int zone = SkyCells.zoneOf(cell);
                double eastStepArcsec = SkyCells.rightAscensionDeg(zone, SkyCells.firstCell(zone), 1)
                        - SkyCells.rightAscensionDeg(zone, SkyCells.firstCell(zone), 0);
                eastStepArcsec *= 3600 * Math.cos(Math.toRadians(zone - 89.5));
                int stars = Short.toUnsignedInt(file.getShort(sizes + cell * Short.BYTES));
                for (int i = 0; i < stars; i++) {
                    double distance = -MEAN_ARCSEC * Math.log(1 - random.nextDouble());
                    double direction = 2 * Math.PI * random.nextDouble();
                    move(file, star, distance * Math.sin(direction) / eastStepArcsec);
                    move(file, star + Short.BYTES, distance * Math.cos(direction) / STEP_ARCSEC);
                    star += StarAtlas.BYTES_PER_STAR;
                }
            }
            return StarAtlas.read(new ByteArrayInputStream(file.array()));
        } catch (IOException e) {
            throw new UncheckedIOException("the bundled star atlas cannot be read", e);
        }
    }

    /** Moves a coordinate by some steps; a star at the edge of its cell stays in it. */
    private static void move(ByteBuffer file, int at, double steps) {
        long moved = Short.toUnsignedInt(file.getShort(at)) + Math.round(steps);
        file.putShort(at, (short) Math.min(STEPS - 1, Math.max(0, moved)));
    }
}
