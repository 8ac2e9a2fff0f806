package polewright.operations.camera;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import polewright.image.FrameFacts;
import polewright.image.decode.DecodeOptions;
import polewright.image.match.ScaleRange;
import polewright.image.match.SkyPatch;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * What the observer knows about frames beyond what their files contain.
 *
 * @param near where they point
 * @param within how near to it
 * @param scale pixel scale: nothing else is tried
 * @param focalLengthMm overrides that of the file
 * @param pixelMicrons overrides that of the file
 * @param mirrored whether left and right are exchanged in the picture as it is drawn
 * @param site where they were taken, which determines the elevated pole
 * @param decoding how to read the files
 */
public record FrameClues(
        Optional<NearPlace> near,
        Angle within,
        Optional<ScaleRange> scale,
        OptionalDouble focalLengthMm,
        OptionalDouble pixelMicrons,
        Optional<Boolean> mirrored,
        Optional<Site> site,
        DecodeOptions decoding) {
    /** How near to the given place a frame is assumed to be by default. */
    public static final Angle USUALLY_WITHIN = Angle.ofDegrees(10);

    /** No clues. */
    public static final FrameClues NONE = new FrameClues(
            Optional.empty(),
            USUALLY_WITHIN,
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            DecodeOptions.DEFAULT);

    /** The same clues, with a site. */
    public FrameClues at(Site where) {
        return new FrameClues(near, within, scale, focalLengthMm, pixelMicrons, mirrored, Optional.of(where), decoding);
    }

    List<SkyPatch> patches(Instant at) {
        return near.map(place -> place.patches(within, site, at)).orElse(List.of());
    }

    /** Pixel scale from the optics, if they are known. */
    Optional<Angle> opticalScale(FrameFacts facts) {
        OptionalDouble focal = focalLengthMm.isPresent() ? focalLengthMm : facts.focalLengthMm();
        OptionalDouble pixel = pixelMicrons.isPresent() ? pixelMicrons : facts.pixelMicrons();
        return new FrameFacts(facts.middle(), facts.localMiddle(), facts.exposure(), focal, pixel, facts.camera())
                .scalePerPixel();
    }
}
