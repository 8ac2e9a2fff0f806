package polewright.image.decode;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import polewright.sky.InputRefused;

/**
 * A gzipped file (RFC 1952), common in archives of FITS files. A few bytes may expand a thousandfold, so the output is
 * counted.
 */
final class GzippedFile {
    private static final String ENDING = ".gz";
    private static final int PART = 1 << 16;
    private static final double MEGABYTE = 1e6;

    private GzippedFile() {}

    /** A name without the extension added by compression. */
    static String nameInside(String name) {
        return name.toLowerCase(Locale.ROOT).endsWith(ENDING)
                ? name.substring(0, name.length() - ENDING.length())
                : name;
    }

    /**
     * The decompressed file.
     *
     * @throws InputRefused if it is truncated, or expands beyond the file limit
     * @throws IOException if it is damaged
     */
    static byte[] decompressed(byte[] content, DecodeOptions options) throws IOException {
        double most = Math.min(
                (double) options.limits().mostFileBytes(), options.limits().mostMemoryBytes() / 2.0);
        ByteArrayOutputStream all = new ByteArrayOutputStream(Math.max(PART, content.length));
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(content), PART)) {
            byte[] part = new byte[PART];
            for (int read = in.read(part); read >= 0; read = in.read(part)) {
                options.deadline().check();
                all.write(part, 0, read);
                if (all.size() > most) {
                    throw new InputRefused(
                            "unpacked it is more than " + Math.round(most / MEGABYTE) + " MB",
                            "save it binned or cropped");
                }
            }
        } catch (EOFException e) {
            throw new InputRefused("this gzip file is incomplete", "wait until it is fully saved, or copy it again");
        }
        return all.toByteArray();
    }

    /** Its first bytes, up to the number requested. */
    static byte[] beginning(byte[] content, int most) {
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(content))) {
            return in.readNBytes(most);
        } catch (IOException e) {
            return new byte[0];
        }
    }

    /** Whether it ends properly; empty if it is damaged before its end. The output is discarded. */
    static Optional<Boolean> isWhole(byte[] content, DecodeDeadline deadline) {
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(content), PART)) {
            byte[] part = new byte[PART];
            while (in.read(part) >= 0) {
                deadline.check();
            }
            return Optional.of(true);
        } catch (EOFException e) {
            return Optional.of(false);
        } catch (IOException e) {
            return Optional.empty();
        }
    }
}
