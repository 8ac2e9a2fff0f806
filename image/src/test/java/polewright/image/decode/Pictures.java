package polewright.image.decode;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;

/** JPEG pictures of a night sky, in memory. */
final class Pictures {
    private Pictures() {}

    /** A dark grey sky with one star, in the middle. */
    static byte[] jpeg(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double dx = x - width / 2;
                double dy = y - height / 2;
                int value = (int) (30 + 200 * Math.exp(-(dx * dx + dy * dy) / 20) + (x * 7 + y * 13) % 5);
                image.getRaster().setSample(x, y, 0, value);
            }
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "JPEG", bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}
