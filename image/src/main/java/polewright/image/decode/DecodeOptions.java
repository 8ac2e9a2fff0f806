package polewright.image.decode;

import java.time.ZoneOffset;
import java.util.Optional;

/**
 * How a file is decoded: what the person tells of it beyond what is in it, and what that may cost.
 *
 * @param mosaic whether there are colour filters before the pixels
 * @param cameraZone zone of the camera's clock, for files that tell the time without it
 * @param limits on size and memory
 * @param deadline on time
 */
public record DecodeOptions(
        Mosaic mosaic, Optional<ZoneOffset> cameraZone, DecodeLimits limits, DecodeDeadline deadline) {
    /** Nothing told, a file of one's own, as long as it takes. */
    public static final DecodeOptions DEFAULT =
            new DecodeOptions(Mosaic.AS_THE_FILE_SAYS, Optional.empty(), DecodeLimits.OF_A_FILE, DecodeDeadline.NONE);

    public DecodeOptions withMosaic(Mosaic told) {
        return new DecodeOptions(told, cameraZone, limits, deadline);
    }

    public DecodeOptions withCameraZone(ZoneOffset zone) {
        return new DecodeOptions(mosaic, Optional.of(zone), limits, deadline);
    }

    public DecodeOptions withLimits(DecodeLimits most) {
        return new DecodeOptions(mosaic, cameraZone, most, deadline);
    }

    public DecodeOptions withDeadline(DecodeDeadline until) {
        return new DecodeOptions(mosaic, cameraZone, limits, until);
    }
}
