package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Node;
import polewright.image.Frame;
import polewright.image.star.FoundStar;
import polewright.image.star.StarFinder;
import polewright.sky.InputRefused;

/**
 * A damaged JPEG: the library decodes it anyway, with what follows the damage misplaced. It is refused, or, if by
 * chance the blocks stayed in step, its stars are in place. Valid files from cameras are not refused.
 */
@Tag("slow")
class DamagedJpegTest {
    private static final int WIDTH = 800;
    private static final int HEIGHT = 600;
    private static final int STARS = 60;
    private static final int CASES = 12;

    private enum Kind {
        PLAIN,
        PROGRESSIVE,
        RESTARTING
    }

    private enum Colours {
        GREY(BufferedImage.TYPE_BYTE_GRAY),
        COLOUR(BufferedImage.TYPE_3BYTE_BGR);

        private final int type;

        Colours(int type) {
            this.type = type;
        }
    }

    private static byte[] sky(int type, Kind kind) {
        SplittableRandom random = new SplittableRandom(11);
        double[] light = new double[WIDTH * HEIGHT];
        Arrays.setAll(light, i -> 24 + 8 * (random.nextDouble() + random.nextDouble() - 1));
        for (int star = 0; star < STARS; star++) {
            double x = 20 + random.nextDouble() * (WIDTH - 40);
            double y = 20 + random.nextDouble() * (HEIGHT - 40);
            double peak = 40 + random.nextDouble() * 180;
            for (int row = (int) y - 8; row <= y + 8; row++) {
                for (int column = (int) x - 8; column <= x + 8; column++) {
                    double r2 = (column - x) * (column - x) + (row - y) * (row - y);
                    light[row * WIDTH + column] += peak * Math.exp(-r2 / 5);
                }
            }
        }
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, type);
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                for (int band = 0; band < image.getRaster().getNumBands(); band++) {
                    image.getRaster().setSample(x, y, band, (int) Math.min(255, light[y * WIDTH + x]));
                }
            }
        }
        return jpeg(image, kind);
    }

    private static byte[] jpeg(BufferedImage image, Kind kind) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setProgressiveMode(
                    kind == Kind.PROGRESSIVE ? ImageWriteParam.MODE_DEFAULT : ImageWriteParam.MODE_DISABLED);
            writer.setOutput(out);
            IIOMetadata metadata =
                    writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(image), how);
            if (kind == Kind.RESTARTING) {
                Node tree = metadata.getAsTree(metadata.getNativeMetadataFormatName());
                IIOMetadataNode interval = new IIOMetadataNode("dri");
                interval.setAttribute("interval", "7");
                Node markers = tree.getLastChild();
                markers.insertBefore(interval, markers.getFirstChild());
                metadata.setFromTree(metadata.getNativeMetadataFormatName(), tree);
            }
            writer.write(null, new IIOImage(image, null, metadata), how);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    /** The position after the header of the first scan. */
    private static int dataStart(byte[] jpeg) {
        int at = 2;
        while ((jpeg[at + 1] & 0xff) != 0xda) {
            at += 2 + length(jpeg, at);
        }
        return at + 2 + length(jpeg, at);
    }

    private static int length(byte[] jpeg, int at) {
        return (jpeg[at + 2] & 0xff) << 8 | (jpeg[at + 3] & 0xff);
    }

    private static byte[] damaged(byte[] jpeg, int bytes, SplittableRandom random) {
        byte[] damaged = jpeg.clone();
        int from = dataStart(jpeg);
        for (int i = 0; i < bytes; i++) {
            damaged[from + random.nextInt(jpeg.length - 2 - from)] ^= (byte) (1 + random.nextInt(255));
        }
        return damaged;
    }

    private static Optional<Frame> read(byte[] jpeg) {
        try {
            return Optional.of(FrameReader.read(jpeg, "dusk.jpg", DecodeOptions.DEFAULT));
        } catch (InputRefused refused) {
            assertThat(refused).hasMessageMatching("dusk.jpg: .*(damaged|incomplete).*");
            return Optional.empty();
        }
    }

    private static boolean isSamePlace(FoundStar star, FoundStar other) {
        return Math.hypot(star.x() - other.x(), star.y() - other.y()) < 1;
    }

    @ParameterizedTest
    @CsvSource({
        "GREY, PLAIN, 60",
        "GREY, PLAIN, 1",
        "COLOUR, PLAIN, 60",
        "COLOUR, PLAIN, 1",
        "COLOUR, PROGRESSIVE, 60",
        "COLOUR, PROGRESSIVE, 1",
        "COLOUR, RESTARTING, 60",
        "COLOUR, RESTARTING, 1",
    })
    void damagedBytes_areRefused_orLeaveTheStarsInPlace(Colours colours, Kind kind, int bytes) {
        byte[] jpeg = sky(colours.type, kind);
        List<FoundStar> whole = StarFinder.find(read(jpeg).orElseThrow()).stars();
        SplittableRandom random = new SplittableRandom(bytes);
        int accepted = 0;
        for (int i = 0; i < CASES; i++) {
            Optional<Frame> frame = read(damaged(jpeg, bytes, random));
            if (frame.isPresent()) {
                accepted++;
                List<FoundStar> found = StarFinder.find(frame.get()).stars();
                assertThat(whole.subList(0, STARS))
                        .as("case %d", i)
                        .allMatch(star -> found.stream().anyMatch(other -> isSamePlace(star, other)));
            }
        }
        assertThat(accepted).isLessThanOrEqualTo(bytes == 1 ? CASES - 1 : 0);
    }

    /** As some cameras write: fill bytes before the last marker, and a revision unknown to the library. */
    @ParameterizedTest
    @EnumSource(Kind.class)
    void harmlessOddities_areNotRefused(Kind kind) {
        byte[] jpeg = sky(Colours.COLOUR.type, kind);
        byte[] filled = Arrays.copyOf(jpeg, jpeg.length + 6);
        Arrays.fill(filled, jpeg.length - 2, filled.length, (byte) 0);
        filled[filled.length - 2] = (byte) 0xff;
        filled[filled.length - 1] = (byte) 0xd9;
        // Major revision, after SOI, marker, length and "JFIF".
        filled[11] = 3;
        assertThat(read(filled)).isPresent();
    }
}
