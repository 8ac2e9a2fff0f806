package polewright.frames.decode;

import java.time.ZoneOffset;
import java.util.Optional;

/**
 * What the person tells of a file beyond what is in it.
 *
 * @param mosaic whether there are colour filters before the pixels
 * @param cameraZone zone of the camera's clock, for files that tell the time without it
 * @param mostPixels frames of more pixels are refused, before memory is taken for them
 */
public record DecodeOptions(Mosaic mosaic, Optional<ZoneOffset> cameraZone, long mostPixels) {
    /** The largest single detectors sold for the sky have about 150 million. */
    private static final long MOST_PIXELS = 200_000_000L;

    /** Nothing told. */
    public static final DecodeOptions DEFAULT =
            new DecodeOptions(Mosaic.AS_THE_FILE_SAYS, Optional.empty(), MOST_PIXELS);

    public DecodeOptions withMosaic(Mosaic told) {
        return new DecodeOptions(told, cameraZone, mostPixels);
    }

    public DecodeOptions withCameraZone(ZoneOffset zone) {
        return new DecodeOptions(mosaic, Optional.of(zone), mostPixels);
    }

    public DecodeOptions withMostPixels(long limit) {
        return new DecodeOptions(mosaic, cameraZone, limit);
    }
}
