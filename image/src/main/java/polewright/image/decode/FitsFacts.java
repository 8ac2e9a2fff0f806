package polewright.image.decode;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import polewright.image.FrameFacts;
import polewright.sky.InputRefused;

/**
 * The metadata in a FITS header.
 *
 * <p><b>Time</b> (FITS standard 4.0, sections 4.4.2.2 and 9): DATE-AVG is the middle; DATE-BEG and DATE-END enclose it;
 * DATE-OBS is the start, and the middle is half an exposure later; MJD-AVG, MJD-BEG, MJD-END and MJD-OBS are used in
 * the same way if there is no date. UTC unless TIMESYS gives another scale. Old pairs of DATE-OBS and TIME-OBS are read
 * too. Some capture programs write local time (common practice): a zone stated by the user is used if TIMESYS is
 * missing.
 *
 * <p><b>Scale</b> (common practice; the standard has no keywords for it): FOCALLEN in millimetres. XPIXSZ in
 * micrometres is the pixel as stored, including binning; if it is missing, PIXSIZE1, the detector's own pixel, times
 * XBINNING. A few programs write XPIXSZ without the binning; the file does not show this, and the scale is then too
 * small by that factor.
 */
final class FitsFacts {
    private static final double LONGEST_EXPOSURE_SECONDS = 86_400;

    private final FitsKeywords keywords;
    private final List<String> remarks = new ArrayList<>();

    private final Optional<ZoneOffset> statedZone;

    private FitsFacts(FitsKeywords keywords, Optional<ZoneOffset> statedZone) {
        this.keywords = keywords;
        this.statedZone = statedZone;
    }

    /**
     * The metadata of the header.
     *
     * @param statedZone time zone of the clock that wrote it, as stated by the user
     */
    static FrameFacts of(FitsKeywords keywords, Optional<ZoneOffset> statedZone) {
        return new FitsFacts(keywords, statedZone).read();
    }

    private FrameFacts read() {
        Optional<LocalDateTime> begin = when("DATE-BEG", Optional.empty());
        Optional<LocalDateTime> end = when("DATE-END", Optional.empty());
        Optional<Duration> exposure = exposure(begin, end);
        Optional<Instant> middle = middle(begin, end, exposure).flatMap(this::inUtc);
        return new FrameFacts(
                middle,
                Optional.empty(),
                exposure,
                keywords.positive("FOCALLEN"),
                pixelMicrons(),
                keywords.text("INSTRUME"),
                remarks);
    }

    private Optional<Duration> exposure(Optional<LocalDateTime> begin, Optional<LocalDateTime> end) {
        for (String keyword : List.of("EXPTIME", "EXPOSURE", "XPOSURE", "TELAPSE")) {
            OptionalDouble seconds = keywords.number(keyword);
            if (seconds.isPresent() && seconds.getAsDouble() >= 0 && seconds.getAsDouble() < LONGEST_EXPOSURE_SECONDS) {
                return Optional.of(Duration.ofNanos(Math.round(seconds.getAsDouble() * 1e9)));
            }
        }
        return begin.flatMap(b -> end.map(e -> Duration.between(b, e)))
                .filter(d -> !d.isNegative() && d.toSeconds() < LONGEST_EXPOSURE_SECONDS);
    }

    private Optional<LocalDateTime> middle(
            Optional<LocalDateTime> begin, Optional<LocalDateTime> end, Optional<Duration> exposure) {
        Optional<LocalDateTime> average = when("DATE-AVG", Optional.empty()).or(() -> mjd("MJD-AVG"));
        if (average.isPresent()) {
            return average;
        }
        if (begin.isPresent() && end.isPresent() && !end.get().isBefore(begin.get())) {
            return Optional.of(
                    begin.get().plus(Duration.between(begin.get(), end.get()).dividedBy(2)));
        }
        Optional<LocalDateTime> start = when(
                        "DATE-OBS", keywords.text("TIME-OBS").or(() -> keywords.text("UT")))
                .or(() -> begin)
                .or(() -> mjd("MJD-OBS"))
                .or(() -> mjd("MJD-BEG"));
        if (start.isPresent()) {
            if (exposure.isEmpty()) {
                remarks.add("it does not give the exposure time, so the start of the exposure is used as its middle");
            }
            return start.map(s -> s.plus(exposure.orElse(Duration.ZERO).dividedBy(2)));
        }
        return end.or(() -> mjd("MJD-END")).flatMap(e -> exposure.map(x -> e.minus(x.dividedBy(2))));
    }

    private Optional<LocalDateTime> when(String keyword, Optional<String> timeOfDay) {
        Optional<String> text = keywords.text(keyword);
        Optional<LocalDateTime> time = text.flatMap(date -> FitsTime.parse(date, timeOfDay));
        if (text.isPresent() && time.isEmpty()) {
            remarks.add("its " + keyword + " '" + text.get() + "' is not a date with a time of day");
        }
        return time;
    }

    private Optional<LocalDateTime> mjd(String keyword) {
        // Zero means "not known" in many headers.
        OptionalDouble mjd = keywords.positive(keyword);
        return mjd.isPresent() && mjd.getAsDouble() < 1e6
                ? Optional.of(FitsTime.fromMjd(mjd.getAsDouble()))
                : Optional.empty();
    }

    private Optional<Instant> inUtc(LocalDateTime time) {
        Optional<String> told = keywords.text("TIMESYS");
        String scale = told.orElse("UTC");
        int aheadSeconds = told.isPresent()
                ? 0
                : statedZone.map(ZoneOffset::getTotalSeconds).orElse(0);
        try {
            Optional<Instant> utc = FitsTime.toUtc(time.minusSeconds(aheadSeconds), scale);
            if (utc.isEmpty()) {
                remarks.add("its time is in the scale '" + scale + "', which cannot be converted to UTC here");
            }
            return utc;
        } catch (InputRefused e) {
            remarks.add("its year is " + time.getYear() + ", outside 1972 to 2100");
            return Optional.empty();
        }
    }

    private OptionalDouble pixelMicrons() {
        OptionalDouble stored = keywords.positive("XPIXSZ");
        if (stored.isPresent()) {
            return stored;
        }
        OptionalDouble own = keywords.positive("PIXSIZE1");
        return own.isEmpty()
                ? own
                : OptionalDouble.of(
                        own.getAsDouble() * keywords.positive("XBINNING").orElse(1));
    }
}
