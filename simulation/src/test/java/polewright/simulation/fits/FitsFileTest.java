package polewright.simulation.fits;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import nom.tam.fits.BasicHDU;
import nom.tam.fits.Fits;
import nom.tam.fits.Header;
import org.junit.jupiter.api.Test;
import polewright.image.Frame;
import polewright.image.FrameFacts;

class FitsFileTest {
    private static final FrameFacts FACTS = new FrameFacts(
            Optional.of(Instant.parse("2026-01-01T00:00:01.250Z")),
            Optional.empty(),
            Optional.of(Duration.ofMillis(4500)),
            OptionalDouble.of(200),
            OptionalDouble.of(3.76),
            Optional.of("Wren 2"));

    private static Frame frame(float... pixels) {
        return new Frame(3, 2, pixels, 65535, FACTS);
    }

    private static BasicHDU<?> read(byte[] bytes) throws Exception {
        try (Fits file = new Fits(new ByteArrayInputStream(bytes))) {
            BasicHDU<?> image = file.readHDU();
            // The file closes with this block: its data must have been read by then.
            assertThat(image.getKernel()).isNotNull();
            return image;
        }
    }

    @Test
    void counts_roundTripFirstRowFirst() throws Exception {
        BasicHDU<?> image = read(FitsFile.of(frame(0, 1, 32767, 32768, 65534, 65535)));

        short[][] stored = (short[][]) image.getKernel();
        double zero = image.getHeader().getDoubleValue("BZERO");
        assertThat(stored[0]).containsExactly((short) (0 - zero), (short) (1 - zero), (short) (32767 - zero));
        assertThat(stored[1]).containsExactly((short) (32768 - zero), (short) (65534 - zero), (short) (65535 - zero));
        assertThat(zero).isEqualTo(32768);
        assertThat(image.getHeader().getDoubleValue("BSCALE", 1)).isEqualTo(1);
        assertThat(image.getHeader().getIntValue("BITPIX")).isEqualTo(16);
        assertThat(image.getHeader().getIntValue("NAXIS1")).isEqualTo(3);
        assertThat(image.getHeader().getIntValue("NAXIS2")).isEqualTo(2);
    }

    @Test
    void dateObs_isTheStartOfTheExposure_evenInTheYearBefore() throws Exception {
        Header header = read(FitsFile.of(frame(0, 0, 0, 0, 0, 0))).getHeader();

        assertThat(header.getStringValue("DATE-OBS")).isEqualTo("2025-12-31T23:59:59.000000");
        assertThat(header.getDoubleValue("EXPTIME")).isEqualTo(4.5);
    }

    @Test
    void cameraAndScale_areWritten() throws Exception {
        Header header = read(FitsFile.of(frame(0, 0, 0, 0, 0, 0))).getHeader();

        assertThat(header.getDoubleValue("FOCALLEN")).isEqualTo(200);
        assertThat(header.getDoubleValue("XPIXSZ")).isEqualTo(3.76);
        assertThat(header.getDoubleValue("YPIXSZ")).isEqualTo(3.76);
        assertThat(header.getIntValue("XBINNING")).isEqualTo(1);
        assertThat(header.getIntValue("YBINNING")).isEqualTo(1);
        assertThat(header.getStringValue("INSTRUME")).isEqualTo("Wren 2");
        assertThat(header.getStringValue("ROWORDER")).isEqualTo("TOP-DOWN");
    }

    @Test
    void unknownFacts_areNotWritten() throws Exception {
        Header header = read(FitsFile.of(new Frame(3, 2, new float[6], 65535, FrameFacts.NONE)))
                .getHeader();

        for (String key : new String[] {"DATE-OBS", "EXPTIME", "FOCALLEN", "XPIXSZ", "XBINNING", "INSTRUME"}) {
            assertThat(header.containsKey(key)).as(key).isFalse();
        }
    }

    @Test
    void countsOutOfRange_areClipped_andMissingPixelsAreZero() throws Exception {
        short[][] stored = (short[][])
                read(FitsFile.of(frame(-5, 70_000, Float.NaN, 1.4f, 1.6f, 0))).getKernel();

        assertThat(stored[0]).containsExactly((short) -32768, (short) 32767, (short) -32768);
        assertThat(stored[1]).containsExactly((short) -32767, (short) -32766, (short) -32768);
    }

    @Test
    void file_followsTheStandardsLayout() {
        byte[] bytes = FitsFile.of(frame(0, 1, 2, 3, 4, 5));

        assertThat(bytes.length % 2880).isZero();
        assertThat(new String(bytes, 0, 30, StandardCharsets.US_ASCII)).isEqualTo("SIMPLE  =                    T");
    }
}
