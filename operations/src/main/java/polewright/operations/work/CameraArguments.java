package polewright.operations.work;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Whole;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.operations.input.PixelsInput;
import polewright.sky.InputRefused;

/** The imaging camera: one of the rig's, or its figures. */
public final class CameraArguments {
    private static final Argument<String> CAMERA = Argument.option(
                    "camera", "Name of the camera", "One of the rig's.", Words.plain("CAMERA"))
            .otherwise("the only one")
            .seldom();
    private static final Argument<Double> FOCAL_LENGTH = Argument.option(
            "focal-length",
            "Focal length",
            "Of the lens or telescope, if the rig has no camera.",
            Figure.of(Unit.MILLIMETRES)
                    .between(1, 20_000, "give the focal length of lens or telescope in millimetres"));
    private static final Argument<Double> PIXEL = Argument.option(
            "pixel",
            "Pixel width",
            "Unbinned.",
            Figure.of(Unit.MICROMETRES).between(0.5, 100, "give the width of an unbinned pixel in micrometres"));
    private static final Argument<PixelsInput.Pixels> SIZE = Argument.option(
                    "size",
                    "Sensor size in pixels",
                    "Width and height, unbinned.",
                    new Words<>("WxH", new PixelsInput()::convert))
            .otherwise("4000x3000")
            .seldom();
    private static final Argument<Long> BINNING = Argument.option("binning", "Binning", "", new Whole("N"))
            .otherwise("1")
            .seldom();

    private static final PixelsInput.Pixels USUAL_SIZE = new PixelsInput.Pixels(4000, 3000);

    public static final List<Argument<?>> ALL = List.of(CAMERA, FOCAL_LENGTH, PIXEL, SIZE, BINNING);

    private CameraArguments() {}

    public static boolean areGiven(Entries entries) {
        return ALL.stream().anyMatch(argument -> entries.given(argument).isPresent());
    }

    /**
     * The camera that was given or meant, with its pixels as binned; if the rig has none, one of the work's other
     * imaging runs.
     *
     * @param before the work so far
     */
    public static Camera camera(Entries entries, Rig rig, List<WorkItem> before) {
        // The work's cameras are already binned, and should not be binned twice.
        return entries.given(BINNING)
                .map(by -> binned(unbinned(entries, rig), by))
                .orElseGet(() -> unbinned(entries, CamerasOfWork.in(rig, before)));
    }

    private static Camera unbinned(Entries entries, Rig rig) {
        Optional<Double> focalLengthMm = entries.given(FOCAL_LENGTH);
        Optional<Double> pixelMicrons = entries.given(PIXEL);
        if (focalLengthMm.isEmpty() && pixelMicrons.isEmpty()) {
            if (entries.given(SIZE).isPresent()) {
                throw new InputRefused(
                        "{size} alone does not describe a camera",
                        "give {focal-length} and {pixel} too, or leave it out");
            }
            return ofRig(rig, entries.given(CAMERA));
        }
        if (focalLengthMm.isEmpty() || pixelMicrons.isEmpty()) {
            throw new InputRefused(
                    focalLengthMm.isEmpty() ? "{pixel} needs {focal-length}" : "{focal-length} needs {pixel}",
                    "give both");
        }
        PixelsInput.Pixels size = entries.given(SIZE).orElse(USUAL_SIZE);
        return new Camera(
                entries.given(CAMERA).orElse("the camera"),
                focalLengthMm.get(),
                pixelMicrons.get(),
                size.width(),
                size.height());
    }

    private static Camera ofRig(Rig rig, Optional<String> name) {
        List<Camera> cameras = rig.cameras();
        if (cameras.isEmpty()) {
            throw new InputRefused(
                    name.map(wanted -> "the rig has no camera called '" + wanted + "', or any other")
                            .orElse("the rig has no camera"),
                    "give {focal-length} and {pixel}, or add the camera to the rig file");
        }
        if (name.isEmpty() && cameras.size() == 1) {
            return cameras.get(0);
        }
        String known = cameras.stream().map(Camera::name).collect(Collectors.joining(", "));
        return cameras.stream()
                .filter(camera -> name.filter(camera.name()::equalsIgnoreCase).isPresent())
                .findFirst()
                .orElseThrow(() -> new InputRefused(
                        name.map(wanted -> "the rig has no camera called '" + wanted + "'")
                                .orElse("the rig has several cameras"),
                        "give {camera} as one of " + known));
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
