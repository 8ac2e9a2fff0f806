package polewright.simulation.fits;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import nom.tam.fits.BasicHDU;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsException;
import nom.tam.fits.Header;
import nom.tam.fits.header.Standard;
import nom.tam.util.FitsOutputStream;
import polewright.image.Frame;
import polewright.image.FrameFacts;

/**
 * A frame as a FITS file of unsigned 16-bit integers (FITS Standard 4.0, 2018: BITPIX 16 with BZERO 32768), with the
 * usual keywords for time, exposure, focal length and pixels.
 */
public final class FitsFile {
    private static final int UNSIGNED_ZERO = 32_768;
    private static final int LARGEST = 65_535;
    private static final DateTimeFormatter DATE_OBS = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSSSSS");

    private FitsFile() {}

    /**
     * The bytes of the file.
     *
     * @param frame counts from 0 to 65535; others are rounded and clipped to this range, and pixels without a value
     *     are 0
     */
    public static byte[] of(Frame frame) {
        try {
            BasicHDU<?> image = Fits.makeHDU(rows(frame));
            addKeywords(image.getHeader(), frame.facts());
            ByteArrayOutputStream bytes = new ByteArrayOutputStream(frame.pixels().length * Short.BYTES + 8640);
            try (Fits file = new Fits();
                    FitsOutputStream out = new FitsOutputStream(bytes)) {
                file.addHDU(image);
                file.write(out);
            }
            return bytes.toByteArray();
        } catch (FitsException e) {
            throw new IllegalStateException("a frame does not fit into a FITS file", e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static short[][] rows(Frame frame) {
        short[][] rows = new short[frame.height()][frame.width()];
        for (int row = 0; row < rows.length; row++) {
            for (int column = 0; column < frame.width(); column++) {
                int count = Math.round(frame.pixels()[row * frame.width() + column]);
                rows[row][column] = (short) (Math.min(LARGEST, Math.max(0, count)) - UNSIGNED_ZERO);
            }
        }
        return rows;
    }

    private static void addKeywords(Header header, FrameFacts facts) throws FitsException {
        header.addValue(Standard.BZERO, UNSIGNED_ZERO);
        header.addValue(Standard.BSCALE, 1);
        // Programs that follow the standard's recommendation draw the first row at the bottom, which mirrors the
        // picture.
        header.addValue("ROWORDER", "TOP-DOWN", "the first row is the picture's top");
        double seconds = facts.exposure().orElse(Duration.ZERO).toNanos() / 1e9;
        if (facts.middle().isPresent()) {
            Instant start = facts.middle().get().minusNanos(Math.round(seconds / 2 * 1e9));
            header.addValue(
                    "DATE-OBS",
                    DATE_OBS.format(LocalDateTime.ofInstant(start, ZoneOffset.UTC)),
                    "start of the exposure, UTC");
        }
        if (facts.exposure().isPresent()) {
            header.addValue("EXPTIME", seconds, "[s] exposure");
        }
        if (facts.focalLengthMm().isPresent()) {
            header.addValue("FOCALLEN", facts.focalLengthMm().getAsDouble(), "[mm] focal length");
        }
        if (facts.pixelMicrons().isPresent()) {
            header.addValue("XPIXSZ", facts.pixelMicrons().getAsDouble(), "[um] width of a pixel");
            header.addValue("YPIXSZ", facts.pixelMicrons().getAsDouble(), "[um] height of a pixel");
            header.addValue("XBINNING", 1, "pixels joined in a row");
            header.addValue("YBINNING", 1, "pixels joined in a column");
        }
        if (facts.camera().isPresent()) {
            header.addValue("INSTRUME", facts.camera().get(), "camera");
        }
    }
}
