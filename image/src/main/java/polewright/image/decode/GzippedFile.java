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
 * A file packed by gzip (RFC 1952), as archives of FITS files are. A few bytes may unpack to a thousand times as many, so
 * what comes out is counted.
 */
final class GzippedFile {
    private static final String ENDING = ".gz";
    private static final int PART = 1 << 16;
    private static final double MEGABYTE = 1e6;

    private GzippedFile() {}

    /** A name without the ending that packing added. */
    static String nameInside(String name) {
        return name.toLowerCase(Locale.ROOT).endsWith(ENDING)
                ? name.substring(0, name.length() - ENDING.length())
                : name;
    }

    /**
     * All that is packed in a file.
     *
     * @throws InputRefused when it is cut short, or more than a file may be
     * @throws IOException when it is damaged
     */
    static byte[] unpacked(byte[] content, DecodeOptions options) throws IOException {
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

    /** Its first bytes, as many as are there and are asked for. */
    static byte[] beginning(byte[] content, int most) {
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(content))) {
            return in.readNBytes(most);
        } catch (IOException e) {
            return new byte[0];
        }
    }

    /** Whether it ends as it should; empty if it is damaged before. Nothing is kept of what comes out. */
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
