package polewright.cli;

import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.image.decode.DecodeOptions;
import polewright.image.decode.Mosaic;
import polewright.image.match.ScaleRange;
import polewright.operations.camera.FrameClues;
import polewright.operations.camera.NearPlace;
import polewright.operations.input.NearInput;
import polewright.operations.input.ScaleInput;
import polewright.operations.input.ZoneInput;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Optional facts about frames, in addition to their metadata. None is required; each speeds up the match. */
public final class FrameOptions {
    @Option(
            names = "--near",
            paramLabel = "PLACE",
            converter = NearInput.class,
            description = "Roughly where the camera points: pole, a star, an object, or RA,DEC in degrees (ICRS).")
    private @Nullable NearPlace near;

    @Option(names = "--within", paramLabel = "DEG", description = "How close to that place. Default: 10.")
    private @Nullable Double withinDeg;

    @Option(
            names = "--scale",
            paramLabel = "ARCSEC[,PERCENT]",
            converter = ScaleInput.class,
            description =
                    "Arcseconds per pixel, with uncertainty if you like: 2.5 or 2.5,10%%. Default: from focal length"
                            + " and"
                            + " pixel size in the file, to 20 %%; otherwise any scale.")
    private @Nullable ScaleRange scale;

    @Option(
            names = "--focal-length",
            paramLabel = "MM",
            description = "Of lens or telescope, if the file lacks it or is wrong.")
    private @Nullable Double focalLengthMm;

    @Option(names = "--pixel-size", paramLabel = "MICRONS", description = "Width of a pixel, binning included.")
    private @Nullable Double pixelMicrons;

    @Option(
            names = "--mosaic",
            paramLabel = "KIND",
            description = "Colour filter mosaic: bayer or none. Default: from the file.")
    private @Nullable Mosaic mosaic;

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            converter = ZoneInput.class,
            description =
                    "Time zone of the camera's clock, if the file lacks it or gives local time as if it were UTC: Z"
                            + " or +01:00.")
    private @Nullable ZoneOffset zone;

    @Option(
            names = "--mirrored",
            paramLabel = "YES|NO",
            description = "Whether the picture is mirrored. Default: both are tried.")
    private @Nullable YesOrNo mirrored;

    /** An answer. */
    enum YesOrNo {
        YES,
        NO
    }

    public FrameClues clues(Optional<Site> site) {
        return new FrameClues(
                Optional.ofNullable(near),
                within(),
                Optional.ofNullable(scale),
                above0(focalLengthMm, "a focal length", "mm"),
                above0(pixelMicrons, "a pixel size", "microns"),
                Optional.ofNullable(mirrored).map(answer -> answer == YesOrNo.YES),
                site,
                decoding());
    }

    private DecodeOptions decoding() {
        DecodeOptions options = DecodeOptions.DEFAULT;
        if (mosaic != null) {
            options = options.withMosaic(mosaic);
        }
        return zone == null ? options : options.withCameraZone(zone);
    }

    private Angle within() {
        if (withinDeg == null) {
            return FrameClues.USUALLY_WITHIN;
        }
        if (near == null) {
            throw new WrongUsage("--within needs a place. Add --near PLACE.");
        }
        if (!(withinDeg > 0 && withinDeg <= 180)) {
            throw new WrongUsage("--within " + PlainNumber.asTyped(withinDeg)
                    + " is outside 0 to 180 degrees. Give how far from there the frame may be, such as 10.");
        }
        return Angle.ofDegrees(withinDeg);
    }

    private static OptionalDouble above0(@Nullable Double given, String what, String unit) {
        if (given == null) {
            return OptionalDouble.empty();
        }
        return WrongUsage.unlessUsable(() -> {
            if (!(given > 0 && given <= 100_000)) {
                throw new InputRefused(
                        String.format(
                                Locale.ROOT, "%s of %s %s is not possible", what, PlainNumber.asTyped(given), unit),
                        "give it in " + unit);
            }
            return OptionalDouble.of(given);
        });
    }
}
