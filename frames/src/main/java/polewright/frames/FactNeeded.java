package polewright.frames;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.stream.Collectors;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** Facts without which the work cannot go on: each is there, or its absence is told in one line with what to do. */
public final class FactNeeded {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss");

    private FactNeeded() {}

    /**
     * When the exposure was at its middle.
     *
     * @param name of the file, for the message
     * @throws InputRefused if the file says nothing of it, or only by a clock of unknown zone
     */
    public static Instant middle(String name, FrameFacts facts) {
        return facts.middle().orElseThrow(() -> {
            if (facts.localMiddle().isPresent()) {
                return new InputRefused(
                        name + " tells the time by the camera's clock ("
                                + CLOCK.format(facts.localMiddle().get()) + ") but not its zone",
                        "give the zone with --zone, such as --zone +01:00 or --zone Z for UTC");
            }
            return new InputRefused(
                    name + " does not say when it was taken" + reasons(facts),
                    "give the middle of its exposure with --at, such as --at 2026-11-25T20:00Z");
        });
    }

    /**
     * Sky along one pixel at the centre of the frame.
     *
     * @param name of the file, for the message
     * @throws InputRefused if focal length or pixel width is not in the file
     */
    public static Angle scalePerPixel(String name, FrameFacts facts) {
        return facts.scalePerPixel().orElseThrow(() -> {
            if (facts.focalLengthMm().isPresent()) {
                return new InputRefused(
                        name + " says the focal length ("
                                + PlainNumber.of(facts.focalLengthMm().getAsDouble())
                                + " mm) but not the size of a pixel",
                        "give --pixel-size in micrometres, or --scale in arcseconds per pixel");
            }
            if (facts.pixelMicrons().isPresent()) {
                return new InputRefused(
                        name + " says the size of a pixel ("
                                + PlainNumber.of(facts.pixelMicrons().getAsDouble())
                                + " micrometres) but not the focal length",
                        "give --focal-length in millimetres, or --scale in arcseconds per pixel");
            }
            return new InputRefused(
                    name + " does not say its scale",
                    "give --scale in arcseconds per pixel, or --focal-length in millimetres and --pixel-size in"
                            + " micrometres");
        });
    }

    private static String reasons(FrameFacts facts) {
        return facts.remarks().isEmpty() ? "" : facts.remarks().stream().collect(Collectors.joining("; ", " (", ")"));
    }
}
