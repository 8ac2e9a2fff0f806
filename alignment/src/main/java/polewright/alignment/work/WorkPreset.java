package polewright.alignment.work;

import java.time.Duration;
import java.util.Comparator;
import java.util.Optional;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** Common kinds of work in plain words; the figures come from the rig's own eyepieces and cameras. */
public enum WorkPreset {
    /** Various objects in the eyepiece with the widest field. */
    CASUAL_LOOK("a casual look"),
    /** The same without a go-to: pushed by hand from star to star. */
    LOOK_BY_HAND("a look by hand"),
    /** Long looks in the narrowest field, found in the widest. */
    PLANETS("planets at high power"),
    /** Half-minute exposures, unguided. */
    SHORT_SUBS("short subs"),
    /** Five-minute exposures, guided. */
    LONG_GUIDED_SUBS("long guided subs");

    // Anything wider is a finder, not an observing eyepiece.
    private static final Angle WIDEST_EYEPIECE = Angle.ofDegrees(3);
    // Fields of a low-power and of a planetary eyepiece, for a rig that lists none (common practice).
    private static final Angle USUAL_WIDE_FIELD = Angle.ofDegrees(0.8);
    private static final Angle USUAL_NARROW_FIELD = Angle.ofDegrees(0.25);
    // Planets stay low for months on end.
    private static final SkyRegion WHERE_PLANETS_ARE = new SkyRegion.Above(Angle.ofDegrees(20));
    private static final Angle USUAL_SEEING = Angle.ofArcseconds(3);
    // Distance of a guide star in a separate guide telescope (common practice); that of an off-axis guider is just
    // outside the picture.
    private static final Angle USUAL_GUIDE_STAR = Angle.ofArcminutes(30);

    private final String words;

    WorkPreset(String words) {
        this.words = words;
    }

    /** The name shown to the user. */
    public String words() {
        return words;
    }

    /** Whether it is imaging. */
    public boolean isShot() {
        return this == SHORT_SUBS || this == LONG_GUIDED_SUBS;
    }

    /**
     * The item with the rig's equipment; imaging uses its camera with the longest focal length.
     *
     * @throws InputRefused if it is imaging and the rig has no camera
     */
    public WorkItem with(Rig rig) {
        return switch (this) {
            case CASUAL_LOOK -> {
                Angle field = wideField(rig);
                yield new VisualObservation(
                        words,
                        field,
                        Duration.ofMinutes(15),
                        new VisualObservation.Finding.GoTo(field.times(0.5)),
                        SkyRegion.Above.THIRTY_DEGREES);
            }
            case LOOK_BY_HAND ->
                new VisualObservation(
                        words,
                        wideField(rig),
                        Duration.ofMinutes(15),
                        new VisualObservation.Finding.ByHand(),
                        SkyRegion.Above.THIRTY_DEGREES);
            case PLANETS ->
                new VisualObservation(
                        words,
                        narrowField(rig),
                        Duration.ofMinutes(10),
                        new VisualObservation.Finding.GoTo(wideField(rig).times(0.5)),
                        WHERE_PLANETS_ARE);
            case SHORT_SUBS, LONG_GUIDED_SUBS ->
                with(mainCamera(rig)
                        .orElseThrow(() -> new InputRefused(
                                words + " need a camera, and the rig has none",
                                "give its focal length and the width of a pixel, or add it to the rig file")));
        };
    }

    /** Imaging with this camera. */
    public ImagingRun with(Camera camera) {
        Angle tolerance = ImagingRun.usualTolerance(camera, USUAL_SEEING);
        return switch (this) {
            case SHORT_SUBS ->
                new ImagingRun(
                        words,
                        camera,
                        SkyRegion.Above.THIRTY_DEGREES,
                        Duration.ofSeconds(30),
                        Duration.ofHours(1),
                        new Guiding.Unguided(),
                        tolerance);
            case LONG_GUIDED_SUBS ->
                new ImagingRun(
                        words,
                        camera,
                        SkyRegion.Above.THIRTY_DEGREES,
                        Duration.ofMinutes(5),
                        Duration.ofHours(3),
                        new Guiding.Guided(usualGuideStar(camera)),
                        tolerance);
            case CASUAL_LOOK, LOOK_BY_HAND, PLANETS ->
                throw new InputRefused("no camera is used for " + words, "leave out the camera options");
        };
    }

    /** The usual distance of a guide star: half a degree, or just outside a picture that is wider than that. */
    public static Angle usualGuideStar(Camera camera) {
        Angle corner = camera.perPixel().times(Math.hypot(camera.widthPixels(), camera.heightPixels()) / 2);
        return corner.compareTo(USUAL_GUIDE_STAR) > 0 ? corner : USUAL_GUIDE_STAR;
    }

    /** The imaging camera; guide cameras use a shorter focal length. */
    public static Optional<Camera> mainCamera(Rig rig) {
        return rig.cameras().stream().max(Comparator.comparingDouble(Camera::focalLengthMm));
    }

    private static Angle wideField(Rig rig) {
        return rig.optics().stream()
                .map(Optic::field)
                .filter(field -> field.compareTo(WIDEST_EYEPIECE) <= 0)
                .max(Comparator.naturalOrder())
                .orElse(USUAL_WIDE_FIELD);
    }

    private static Angle narrowField(Rig rig) {
        return rig.optics().stream()
                .map(Optic::field)
                .filter(field -> field.compareTo(WIDEST_EYEPIECE) <= 0)
                .min(Comparator.naturalOrder())
                .orElse(USUAL_NARROW_FIELD);
    }
}
