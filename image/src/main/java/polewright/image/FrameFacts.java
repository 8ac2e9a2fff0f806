package polewright.image;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import polewright.sky.angle.Angle;

/**
 * What a picture's file says of itself; whatever it leaves out is empty.
 *
 * @param middle middle of the exposure, UTC
 * @param localMiddle middle of the exposure by the camera's own clock, where the file does not say which zone it keeps
 *     (EXIF); empty when {@code middle} is known
 * @param exposure how long the shutter was open
 * @param focalLengthMm of the lens or telescope
 * @param pixelMicrons width of a pixel of the picture as it is stored, on the detector: binning included
 * @param camera name of the camera, to tell one camera's frames from another's
 * @param remarks what the file says that could not be used, or was used with a grain of salt; a short clause each, for
 *     the person
 */
public record FrameFacts(
        Optional<Instant> middle,
        Optional<LocalDateTime> localMiddle,
        Optional<Duration> exposure,
        OptionalDouble focalLengthMm,
        OptionalDouble pixelMicrons,
        Optional<String> camera,
        List<String> remarks) {
    /** A file that says nothing. */
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

    /** Facts without a remark. */
    public FrameFacts(
            Optional<Instant> middle,
            Optional<LocalDateTime> localMiddle,
            Optional<Duration> exposure,
            OptionalDouble focalLengthMm,
            OptionalDouble pixelMicrons,
            Optional<String> camera) {
        this(middle, localMiddle, exposure, focalLengthMm, pixelMicrons, camera, List.of());
    }

    /** Sky along one pixel at the centre, from focal length and pixel width, where the file gives both. */
    public Optional<Angle> scalePerPixel() {
        if (focalLengthMm.isEmpty() || pixelMicrons.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Angle(pixelMicrons.getAsDouble() / 1000 / focalLengthMm.getAsDouble()));
    }

    /** The same, taken at this time. */
    public FrameFacts takenAt(Instant time) {
        return new FrameFacts(
                Optional.of(time), Optional.empty(), exposure, focalLengthMm, pixelMicrons, camera, remarks);
    }
}
