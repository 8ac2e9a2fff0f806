package polewright.image.decode;

import com.drew.metadata.Directory;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.GpsDirectory;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import polewright.image.FrameFacts;

/**
 * The metadata in an Exif block (CIPA DC-008, Exif 2.32).
 *
 * <p><b>Time.</b> DateTimeOriginal with its hundredths is taken as the start of the exposure, as cameras write it
 * (common practice: the standard only says "when the original image data was generated"), and the middle is half an
 * exposure later. Without it DateTimeDigitized is used, then DateTime. It is in the camera's clock: UTC follows from
 * OffsetTimeOriginal or its equivalents, otherwise from the zone that the user stated. The time of a satellite receiver
 * is already UTC and takes precedence over a stated zone.
 *
 * <p><b>Pixel.</b> FocalPlaneXResolution counts pixels of the camera's picture of PixelXDimension columns. This frame
 * may be a smaller version from the same detector, whose pixels are larger in proportion. Without that tag, the
 * detector's diagonal is 43.27 mm × FocalLength / FocalLengthIn35mmFilm, good to a few per cent, as the latter is in
 * whole millimetres.
 */
final class ExifFacts {
    private static final DateTimeFormatter DATE_TIME = DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss");
    private static final double FULL_FRAME_DIAGONAL_MM = 43.27;
    private static final double LONGEST_EXPOSURE_SECONDS = 86_400;
    /** Camera detectors have pixels of 0.5 to 30 micrometres; a further factor allows for small previews. */
    private static final double MOST_MICRONS = 300;

    private static final int UNIT_CENTIMETRE = 3;
    private static final int UNIT_MILLIMETRE = 4;
    private static final int UNIT_MICROMETRE = 5;
    /** Zones are whole quarters of an hour; the remainder is the difference between the camera's two clocks. */
    private static final long ZONE_STEP_SECONDS = 900;

    private static final long CLOCKS_AGREE_SECONDS = 60;

    private final TiffDirectories exif;
    private final List<String> remarks = new ArrayList<>();

    private ExifFacts(TiffDirectories exif) {
        this.exif = exif;
    }

    /**
     * The metadata of a picture.
     *
     * @param width columns of the decoded frame
     * @param height its rows
     */
    static FrameFacts of(TiffDirectories exif, int width, int height, Optional<ZoneOffset> statedZone) {
        return new ExifFacts(exif).read(width, height, statedZone);
    }

    private FrameFacts read(int width, int height, Optional<ZoneOffset> statedZone) {
        Optional<Duration> exposure = exposure();
        Duration half = exposure.orElse(Duration.ZERO).dividedBy(2);
        Optional<LocalDateTime> local = local().map(start -> start.plus(half));
        Optional<Instant> byReceiver = byReceiver().map(start -> start.plus(half));
        Optional<ZoneOffset> zone = zone();
        Optional<Instant> middle = local.flatMap(l -> zone.map(l::toInstant))
                .or(() -> byReceiver)
                .or(() -> local.flatMap(l -> statedZone.map(l::toInstant)));
        if (local.isPresent() && zone.isEmpty() && byReceiver.isPresent()) {
            remarkIfClocksDiffer(local.get(), byReceiver.get());
        }
        if (exposure.isEmpty() && (middle.isPresent() || local.isPresent())) {
            remarks.add("it does not give the exposure time, so the start of the exposure is used as its middle");
        }
        return new FrameFacts(
                middle,
                middle.isPresent() ? Optional.empty() : local,
                exposure,
                exif.positive(ExifDirectoryBase.TAG_FOCAL_LENGTH),
                pixelMicrons(width, height),
                exif.text(ExifDirectoryBase.TAG_MODEL),
                remarks);
    }

    private Optional<Duration> exposure() {
        OptionalDouble seconds = exif.positive(ExifDirectoryBase.TAG_EXPOSURE_TIME);
        return seconds.isPresent() && seconds.getAsDouble() < LONGEST_EXPOSURE_SECONDS
                ? Optional.of(Duration.ofNanos(Math.round(seconds.getAsDouble() * 1e9)))
                : Optional.empty();
    }

    private Optional<LocalDateTime> local() {
        return local(ExifDirectoryBase.TAG_DATETIME_ORIGINAL, ExifDirectoryBase.TAG_SUBSECOND_TIME_ORIGINAL)
                .or(() ->
                        local(ExifDirectoryBase.TAG_DATETIME_DIGITIZED, ExifDirectoryBase.TAG_SUBSECOND_TIME_DIGITIZED))
                .or(this::lastChange);
    }

    /** Programs that convert pictures often keep only this; cameras write it with the picture. */
    private Optional<LocalDateTime> lastChange() {
        Optional<LocalDateTime> changed = local(ExifDirectoryBase.TAG_DATETIME, ExifDirectoryBase.TAG_SUBSECOND_TIME);
        if (changed.isPresent()) {
            remarks.add("it only gives the time of last change (DateTime), which is used as the time of exposure");
        }
        return changed;
    }

    private Optional<LocalDateTime> local(int tag, int subsecondTag) {
        Optional<String> text = exif.text(tag);
        // A camera whose clock was never set writes zeros or blanks.
        if (text.isEmpty() || !text.get().matches(".*[1-9].*")) {
            return Optional.empty();
        }
        try {
            LocalDateTime whole = LocalDateTime.parse(text.get(), DATE_TIME);
            return Optional.of(exif.text(subsecondTag)
                    .filter(digits -> digits.matches("\\d{1,9}"))
                    .map(digits -> whole.plusNanos(Math.round(Double.parseDouble("0." + digits) * 1e9)))
                    .orElse(whole));
        } catch (DateTimeException e) {
            remarks.add("its date '" + text.get() + "' cannot be read");
            return Optional.empty();
        }
    }

    private Optional<ZoneOffset> zone() {
        Optional<String> text = exif.text(ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL)
                .or(() -> exif.text(ExifDirectoryBase.TAG_TIME_ZONE_DIGITIZED))
                .or(() -> exif.text(ExifDirectoryBase.TAG_TIME_ZONE))
                .filter(zone -> zone.matches(".*\\d.*|Z"));
        try {
            return text.map(ZoneOffset::of);
        } catch (DateTimeException e) {
            remarks.add("its zone '" + text.orElse("") + "' cannot be read");
            return Optional.empty();
        }
    }

    private Optional<Instant> byReceiver() {
        for (Directory directory : exif.all()) {
            if (directory instanceof GpsDirectory receiver) {
                Date date = receiver.getGpsDate();
                if (date != null) {
                    return Optional.of(date.toInstant());
                }
            }
        }
        return Optional.empty();
    }

    private void remarkIfClocksDiffer(LocalDateTime local, Instant byReceiver) {
        long seconds =
                Duration.between(byReceiver, local.toInstant(ZoneOffset.UTC)).toSeconds();
        long left = Math.floorMod(seconds + ZONE_STEP_SECONDS / 2, ZONE_STEP_SECONDS) - ZONE_STEP_SECONDS / 2;
        if (Math.abs(left) > CLOCKS_AGREE_SECONDS) {
            remarks.add("its clock and its satellite receiver differ by " + Math.abs(left)
                    + " s apart from the time zone; the receiver's time is used");
        }
    }

    private OptionalDouble pixelMicrons(int width, int height) {
        OptionalDouble resolution = exif.positive(ExifDirectoryBase.TAG_FOCAL_PLANE_X_RESOLUTION);
        double columns = mainColumns().orElse(width);
        double microns = Double.NaN;
        if (resolution.isPresent()) {
            microns = unitMicrons() / resolution.getAsDouble() * columns / width;
        } else {
            OptionalDouble focal = exif.positive(ExifDirectoryBase.TAG_FOCAL_LENGTH);
            OptionalDouble equivalent = exif.positive(ExifDirectoryBase.TAG_35MM_FILM_EQUIV_FOCAL_LENGTH);
            if (focal.isPresent() && equivalent.isPresent()) {
                microns = FULL_FRAME_DIAGONAL_MM
                        * 1000
                        * focal.getAsDouble()
                        / equivalent.getAsDouble()
                        / Math.hypot(width, height);
            }
        }
        return microns > 0 && microns < MOST_MICRONS ? OptionalDouble.of(microns) : OptionalDouble.empty();
    }

    private OptionalInt mainColumns() {
        OptionalDouble told = exif.positive(ExifDirectoryBase.TAG_EXIF_IMAGE_WIDTH);
        if (told.isPresent()) {
            return OptionalInt.of((int) told.getAsDouble());
        }
        return exif.all().stream()
                .flatMapToLong(d -> Arrays.stream(TiffDirectories.numbers(d, ExifDirectoryBase.TAG_IMAGE_WIDTH)))
                .filter(columns -> columns > 0 && columns <= Integer.MAX_VALUE)
                .mapToInt(Math::toIntExact)
                .max();
    }

    private double unitMicrons() {
        OptionalDouble unit = exif.positive(ExifDirectoryBase.TAG_FOCAL_PLANE_RESOLUTION_UNIT);
        return switch ((int) unit.orElse(2)) {
            case UNIT_CENTIMETRE -> 10_000;
            case UNIT_MILLIMETRE -> 1000;
            case UNIT_MICROMETRE -> 1;
            default -> 25_400;
        };
    }
}
