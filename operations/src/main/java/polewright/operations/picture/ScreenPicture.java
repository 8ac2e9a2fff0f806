package polewright.operations.picture;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import polewright.drawing.frame.CloseUp;
import polewright.image.Frame;
import polewright.operations.camera.DecodedFrame;

/**
 * A frame's image for a screen: fast to make, no larger than a page has room for, and any part of it at full size.
 * Keeps one byte for each of the frame's pixels, not the frame. Thread-safe.
 */
public final class ScreenPicture {
    /** Largest width in points. */
    public static final int MOST_WIDE = 1024;

    private static final int MOST_PART = 1024;
    // Deflate's first level: noise does not compress further, and it takes a fifth of the time.
    private static final float QUICK = 0.9f;

    private final PictureScale scale;
    private final PictureScale full;
    private final byte[] shades;
    private final byte[] fullShades;

    private ScreenPicture(DecodedFrame decoded) {
        Frame frame = decoded.frame();
        Stretch stretch = Stretch.of(frame);
        this.scale = PictureScale.forScreen(frame.width(), frame.height(), decoded.rows(), MOST_WIDE);
        this.full = new PictureScale(frame.width(), frame.height(), decoded.rows(), 1);
        this.shades = scale.shades(frame, stretch);
        this.fullShades = full.shades(frame, stretch);
    }

    public static ScreenPicture of(DecodedFrame decoded) {
        return new ScreenPicture(decoded);
    }

    /** Points across. */
    public int width() {
        return scale.width();
    }

    /** Points down. */
    public int height() {
        return scale.height();
    }

    /** Columns of the frame. */
    public int fullWidth() {
        return full.width();
    }

    /** Rows of the frame. */
    public int fullHeight() {
        return full.height();
    }

    /** The magnification at which a part shows every pixel. */
    public int fullSizeTimes() {
        int most = Math.max(fullWidth(), fullHeight());
        return Math.max(2, (most + MOST_PART - 1) / MOST_PART);
    }

    /** The bytes of a PNG of a close-up, one point per pixel. */
    public byte[] png(Tint tint, CloseUp part) {
        return part.isWhole()
                ? png(tint)
                : part(
                        tint,
                        (int) Math.round(part.left() * fullWidth()),
                        (int) Math.round(part.top() * fullHeight()),
                        Math.round((float) fullWidth() / part.times()),
                        Math.round((float) fullHeight() / part.times()));
    }

    /** The bytes of a PNG of the whole frame. */
    public byte[] png(Tint tint) {
        return png(shades, width(), height(), tint);
    }

    /**
     * The bytes of a PNG of a part of the frame, one point per pixel; the part is shifted to lie within the frame,
     * and limited to its size and to {@value #MOST_PART} points a side.
     *
     * @param left first column as drawn
     * @param top first row as drawn, from the upper edge
     * @param wide columns
     * @param high rows
     */
    public byte[] part(Tint tint, int left, int top, int wide, int high) {
        int width = Math.max(1, Math.min(Math.min(wide, MOST_PART), fullWidth()));
        int height = Math.max(1, Math.min(Math.min(high, MOST_PART), fullHeight()));
        int x = Math.max(0, Math.min(left, fullWidth() - width));
        int y = Math.max(0, Math.min(top, fullHeight() - height));
        byte[] part = new byte[width * height];
        for (int row = 0; row < height; row++) {
            System.arraycopy(fullShades, (y + row) * fullWidth() + x, part, row * width, width);
        }
        return png(part, width, height, tint);
    }

    /** A whole frame at a scale. */
    static BufferedImage image(PictureScale scale, Frame frame, Tint tint) {
        return image(scale.shades(frame, Stretch.of(frame)), scale.width(), scale.height(), tint);
    }

    private static BufferedImage image(byte[] shades, int width, int height, Tint tint) {
        WritableRaster raster = Raster.createInterleavedRaster(
                new DataBufferByte(shades, shades.length), width, height, width, 1, new int[] {0}, null);
        return new BufferedImage(tint.colours(), raster, false, null);
    }

    private static byte[] png(byte[] shades, int width, int height, Tint tint) {
        BufferedImage image = image(shades, width, height, tint);
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(shades.length / 2);
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            how.setCompressionQuality(QUICK);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), how);
        } catch (IOException e) {
            throw new UncheckedIOException("a picture was not written to memory", e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
