package polewright.image.decode;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Small FITS files put together by hand (FITS standard 4.0, section 3). */
final class TinyFits {
    private static final int BLOCK = 2880;
    private static final int CARD = 80;

    private final List<String> cards = new ArrayList<>();
    private byte[] data = {};

    static TinyFits image(int bitpix, int... axes) {
        TinyFits fits = new TinyFits();
        fits.card("SIMPLE", "T");
        fits.card("BITPIX", "" + bitpix);
        fits.card("NAXIS", "" + axes.length);
        for (int i = 0; i < axes.length; i++) {
            fits.card("NAXIS" + (i + 1), "" + axes[i]);
        }
        return fits;
    }

    /** A frame of unsigned 16-bit pixels, row by row. */
    static TinyFits counts(int width, int height, int... pixels) {
        ByteBuffer stored = ByteBuffer.allocate(2 * width * height);
        for (int pixel : pixels) {
            stored.putShort((short) (pixel - 32_768));
        }
        return image(16, width, height).card("BZERO", "32768").data(stored.array());
    }

    /** A value as written in the card: text with its quotes. */
    TinyFits card(String keyword, String value) {
        cards.add(String.format(Locale.ROOT, "%-8s= %20s", keyword, value));
        return this;
    }

    TinyFits data(byte[] bytes) {
        data = bytes;
        return this;
    }

    byte[] bytes() {
        StringBuilder header = new StringBuilder();
        cards.forEach(card -> header.append(String.format(Locale.ROOT, "%-" + CARD + "s", card)));
        header.append(String.format(Locale.ROOT, "%-" + CARD + "s", "END"));
        byte[] text = header.toString().getBytes(StandardCharsets.US_ASCII);
        byte[] file = new byte[padded(text.length) + padded(data.length)];
        Arrays.fill(file, 0, padded(text.length), (byte) ' ');
        System.arraycopy(text, 0, file, 0, text.length);
        System.arraycopy(data, 0, file, padded(text.length), data.length);
        return file;
    }

    private static int padded(int bytes) {
        return (bytes + BLOCK - 1) / BLOCK * BLOCK;
    }
}
