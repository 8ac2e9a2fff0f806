package polewright.image.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import polewright.image.FrameFacts;

/** Metadata of FITS headers: times compared with astropy's, the rest with the meaning of the keywords. */
class FitsFactsTest {
    private static final Pattern CARD = Pattern.compile("([A-Z0-9-]+)=('[^']*'|\\S+)");

    static List<String> times() {
        return Authority.lines("fits/times.csv");
    }

    private static FrameFacts facts(String cards) {
        return facts(cards, DecodeOptions.DEFAULT);
    }

    private static FrameFacts facts(String cards, DecodeOptions options) {
        TinyFits fits = TinyFits.counts(2, 2, 10, 11, 12, 13);
        Matcher card = CARD.matcher(cards);
        while (card.find()) {
            fits.card(card.group(1), card.group(2));
        }
        return FrameReader.read(fits.bytes(), "dusk.fits", options).facts();
    }

    /**
     * Some capture programs write local time (common practice); TIMESYS shows that the scale was chosen deliberately.
     */
    @ParameterizedTest
    @CsvSource({
        "DATE-OBS='2026-11-25T22:00:00' EXPTIME=30.0, 2026-11-25T20:00:15Z",
        "DATE-OBS='2026-11-25T22:00:00' EXPTIME=30.0 TIMESYS='UTC', 2026-11-25T22:00:15Z"
    })
    void statedZone_isUsedIfTheHeaderHasNoTimeScale(String cards, Instant middle) {
        DecodeOptions ahead = DecodeOptions.DEFAULT.withCameraZone(ZoneOffset.ofHours(2));
        assertThat(facts(cards, ahead).middle()).contains(middle);
    }

    @ParameterizedTest
    @MethodSource("times")
    void middleOfTheExposure_agreesWithAnIndependentLibrary(String line) {
        String[] cells = line.split(",", -1);
        Instant middle = facts(cells[0]).middle().orElseThrow();
        // The table is written to a microsecond.
        assertThat(Duration.between(Instant.parse(cells[1]), middle).toNanos() / 1e3)
                .isCloseTo(0, within(1.0));
    }

    @Test
    void leapSecond_isTheNextSecondOfAClockWithoutThem() {
        assertThat(facts("DATE-OBS='2016-12-31T23:59:60.5' EXPTIME=0.0").middle())
                .contains(Instant.parse("2017-01-01T00:00:00.5Z"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '"', textBlock = """
            DATE-OBS='2026-11-25' EXPTIME=30.0            | its DATE-OBS '2026-11-25' is not a date with a time of day
            DATE-OBS='2026-13-25T20:00:00' EXPTIME=30.0   | its DATE-OBS '2026-13-25T20:00:00' is not a date with a time of day
            DATE-OBS='2026-11-25T25:00:00' EXPTIME=30.0   | its DATE-OBS '2026-11-25T25:00:00' is not a date with a time of day
            DATE-OBS='last night' EXPTIME=30.0            | its DATE-OBS 'last night' is not a date with a time of day
            DATE-OBS='2026-11-25T20:00:00' EXPTIME=30.0 TIMESYS='TCB' | its time is in the scale 'TCB', which cannot be converted to UTC here
            DATE-OBS='1926-11-25T20:00:00' EXPTIME=30.0 TIMESYS='TT'  | its year is 1926, outside 1972 to 2100
            """)
    void unusableTime_isAbsent_withTheReason(String cards, String remark) {
        assertThat(facts(cards).middle()).isEmpty();
        assertThat(facts(cards).remarks()).containsExactly(remark);
    }

    @Test
    void startWithoutAnExposure_isUsedAsTheMiddle_withARemark() {
        FrameFacts facts = facts("DATE-OBS='2026-11-25T20:00:00'");
        assertThat(facts.middle()).contains(Instant.parse("2026-11-25T20:00:00Z"));
        assertThat(facts.remarks())
                .containsExactly(
                        "it does not give the exposure time, so the start of the exposure is used as its" + " middle");
    }

    @Test
    void headerWithoutMetadata_hasNoFacts() {
        assertThat(facts("")).isEqualTo(FrameFacts.NONE);
    }

    @Test
    void primaryHeader_appliesToAnImageInAnExtension() {
        FrameFacts facts = FitsPixelsTest.read("extension.fits").facts();
        assertThat(facts.middle()).contains(Instant.parse("2026-11-25T20:00:15Z"));
        assertThat(facts.exposure()).contains(Duration.ofSeconds(30));
        assertThat(facts.focalLengthMm()).hasValue(530);
        assertThat(facts.pixelMicrons()).hasValue(3.76);
        assertThat(facts.camera()).contains("Larkfell guide camera");
        // 206.265 × 3.76 / 530, the rule in every handbook.
        assertThat(facts.scalePerPixel().orElseThrow().arcseconds()).isCloseTo(1.4633, within(0.0001));
    }

    /** Common practice; see {@link FitsFacts}. */
    @ParameterizedTest
    @CsvSource({
        "XPIXSZ=7.52 XBINNING=2, 7.52",
        "PIXSIZE1=3.76 XBINNING=2, 7.52",
        "PIXSIZE1=3.76, 3.76",
        "XPIXSZ=7.52 PIXSIZE1=3.76 XBINNING=2, 7.52",
        "XPIXSZ=0.0 PIXSIZE1=3.76 XBINNING=2, 7.52",
        "XPIXSZ='3.76', 3.76",
    })
    void pixelSize_isThatOfThePictureAsStored(String cards, double microns) {
        assertThat(facts(cards).pixelMicrons()).hasValue(microns);
    }

    @ParameterizedTest
    @CsvSource({"FOCALLEN=0.0 XPIXSZ=-1.0", "FOCALLEN=-530 XPIXSZ=0", "FOCALLEN='unknown' XPIXSZ='NaN'"})
    void impossibleValues_areAbsent(String cards) {
        assertThat(facts(cards).focalLengthMm()).isEmpty();
        assertThat(facts(cards).pixelMicrons()).isEmpty();
        assertThat(facts(cards).scalePerPixel()).isEmpty();
    }
}
