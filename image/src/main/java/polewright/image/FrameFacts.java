package polewright.image;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import polewright.sky.angle.Angle;

/**
 * Metadata of a picture from its file; missing values are empty.
 *
 * @param middle middle of the exposure, UTC
 * @param localMiddle middle of the exposure by the camera's own clock, if the file does not give its time zone (EXIF);
 *     empty when {@code middle} is known
 * @param exposure exposure time
 * @param focalLengthMm of the lens or telescope
 * @param pixelMicrons width on the detector of a pixel as stored, including binning
 * @param camera name of the camera, to distinguish frames of different cameras
 * @param remarks metadata that could not be used or is doubtful; a short clause each, shown to the user
 */
public record FrameFacts(
        Optional<Instant> middle,
        Optional<LocalDateTime> localMiddle,
        Optional<Duration> exposure,
        OptionalDouble focalLengthMm,
        OptionalDouble pixelMicrons,
        Optional<String> camera,
        List<String> remarks) {
    /** A file without metadata. */
    public static final FrameFacts NONE = new FrameFacts(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty());

    public FrameFacts {
        remarks = List.copyOf(remarks);
    }

    /** Facts without remarks. */
    public FrameFacts(
            Optional<Instant> middle,
            Optional<LocalDateTime> localMiddle,
            Optional<Duration> exposure,
            OptionalDouble focalLengthMm,
            OptionalDouble pixelMicrons,
            Optional<String> camera) {
        this(middle, localMiddle, exposure, focalLengthMm, pixelMicrons, camera, List.of());
    }

    /** Pixel scale at the centre, from focal length and pixel width, if the file gives both. */
    public Optional<Angle> scalePerPixel() {
        if (focalLengthMm.isEmpty() || pixelMicrons.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Angle(pixelMicrons.getAsDouble() / 1000 / focalLengthMm.getAsDouble()));
    }

    /** A copy with this time. */
    public FrameFacts takenAt(Instant time) {
        return new FrameFacts(
                Optional.of(time), Optional.empty(), exposure, focalLengthMm, pixelMicrons, camera, remarks);
    }
}
