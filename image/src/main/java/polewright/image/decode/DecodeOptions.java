package polewright.image.decode;

import java.time.ZoneOffset;
import java.util.Optional;

/**
 * How a file is decoded: what the user states in addition to the file's own metadata, and the resource limits.
 *
 * @param mosaic whether the pixels are behind a colour filter array
 * @param cameraZone time zone of the camera's clock, for files that give the time without it
 * @param limits on size and memory
 * @param deadline on time
 */
public record DecodeOptions(
        Mosaic mosaic, Optional<ZoneOffset> cameraZone, DecodeLimits limits, DecodeDeadline deadline) {
    /** Nothing stated, a local file, no time limit. */
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
