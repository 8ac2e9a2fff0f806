package polewright.cli;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.operations.input.PixelsInput;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;

/** The imaging camera: one of the rig's, or one that is typed. */
final class CameraOptions {
    private static final int USUAL_WIDTH = 4000;
    private static final int USUAL_HEIGHT = 3000;

    @Option(
            names = "--camera",
            paramLabel = "CAMERA",
            description = "One of the rig's cameras, by name. Default: the only one.")
    private @Nullable String name;

    @Option(names = "--focal-length", paramLabel = "MM", description = "Focal length of the lens or telescope.")
    private @Nullable Double focalLengthMm;

    @Option(names = "--pixel", paramLabel = "MICRONS", description = "Width of a pixel, unbinned.")
    private @Nullable Double pixelMicrons;

    @Option(
            names = "--size",
            paramLabel = "WxH",
            converter = PixelsInput.class,
            description = "Size of the sensor in pixels, unbinned. Default: 4000x3000.")
    private PixelsInput.@Nullable Pixels pixels;

    @Option(names = "--binning", paramLabel = "N", description = "Binning factor. Default: 1.")
    private @Nullable Long binning;

    boolean areGiven() {
        return name != null || focalLengthMm != null || pixelMicrons != null || pixels != null || binning != null;
    }

    /**
     * The camera that was typed or meant, with its pixels as binned; if the rig has none, one of the work's other
     * imaging runs.
     *
     * @param before the work so far
     */
    Camera camera(Rig rig, List<WorkItem> before) {
        // The work's cameras are already binned, and should not be binned twice.
        return binning == null ? unbinned(CamerasOfWork.in(rig, before)) : binned(unbinned(rig), binning);
    }

    private Camera unbinned(Rig rig) {
        if (focalLengthMm == null && pixelMicrons == null) {
            if (pixels != null) {
                throw new InputRefused(
                        "--size alone does not describe a camera", "add --focal-length and --pixel, or leave it out");
            }
            return ofRig(rig);
        }
        if (focalLengthMm == null || pixelMicrons == null) {
            throw new InputRefused(
                    (focalLengthMm == null ? "--pixel needs --focal-length" : "--focal-length needs --pixel"),
                    "give both");
        }
        if (!(focalLengthMm >= 1 && focalLengthMm <= 20_000)) {
            throw new InputRefused(
                    "a focal length of " + PlainNumber.asTyped(focalLengthMm) + " mm is outside 1 to 20000",
                    "give it in mm");
        }
        if (!(pixelMicrons >= 0.5 && pixelMicrons <= 100)) {
            throw new InputRefused(
                    "a pixel of " + PlainNumber.asTyped(pixelMicrons) + " microns is outside 0.5 to 100",
                    "give its width in microns, unbinned");
        }
        return new Camera(
                name == null ? "the camera" : name,
                focalLengthMm,
                pixelMicrons,
                pixels == null ? USUAL_WIDTH : pixels.width(),
                pixels == null ? USUAL_HEIGHT : pixels.height());
    }

    private Camera ofRig(Rig rig) {
        List<Camera> cameras = rig.cameras();
        if (cameras.isEmpty()) {
            throw new InputRefused(
                    name == null
                            ? "the rig has no camera"
                            : "the rig has no camera called '" + name + "', or any other",
                    "give --focal-length and --pixel, or add the camera to the rig file");
        }
        if (name == null && cameras.size() == 1) {
            return cameras.get(0);
        }
        Optional<Camera> named =
                cameras.stream().filter(c -> c.name().equalsIgnoreCase(name)).findFirst();
        String known = cameras.stream().map(Camera::name).collect(Collectors.joining(", "));
        return named.orElseThrow(() -> new InputRefused(
                name == null ? "the rig has several cameras" : "the rig has no camera called '" + name + "'",
                "add --camera with one of " + known));
    }

    private static Camera binned(Camera camera, long binning) {
        if (!(binning >= 1 && binning <= 8)) {
            throw new InputRefused("binning " + binning + " is outside 1 to 8", "1 means no binning");
        }
        int by = (int) binning;
        return new Camera(
                camera.name(),
                camera.focalLengthMm(),
                camera.pixelMicrons() * by,
                camera.widthPixels() / by,
                camera.heightPixels() / by);
    }
}
