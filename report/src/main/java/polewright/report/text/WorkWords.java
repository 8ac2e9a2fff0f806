package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.SkyRegion;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.Camera;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** Tonight's work in words. */
public final class WorkWords {
    private WorkWords() {}

    /** One item in one line, its name first. */
    public static String of(WorkItem item) {
        return item.name() + ": " + figures(item) + "; " + region(item.region()) + ".";
    }

    /** Their names, in a list. */
    public static String names(List<WorkItem> items) {
        return items.stream().map(WorkItem::name).collect(Collectors.joining(", "));
    }

    private static String figures(WorkItem item) {
        return String.join(", ", item.accept(new Figures()));
    }

    /** As typed: in degrees from 100′ on. */
    private static String read(Angle angle) {
        return angle.arcminutes() >= 99.5 ? AngleWords.read(angle) : PlainNumber.asRead(angle.arcminutes()) + "′";
    }

    private static String camera(Camera camera) {
        return camera.name() + " (" + PlainNumber.of(camera.focalLengthMm()) + " mm, " + camera.widthPixels() + "×"
                + camera.heightPixels() + " pixels of " + ArcsecondWords.of(camera.perPixel()) + ")";
    }

    private static String region(SkyRegion region) {
        return region.accept(new Region());
    }

    private static String declination(Angle angle) {
        return (angle.radians() < 0 ? "−" : "+") + AngleWords.degrees(angle.abs());
    }

    /** {@code 1h20m east}, {@code the meridian}. */
    static String hours(Angle hourAngle) {
        long minutes = Math.round(hourAngle.hours() * 60);
        if (minutes == 0) {
            return "the meridian";
        }
        return String.format(java.util.Locale.ROOT, "%dh%02dm", Math.abs(minutes) / 60, Math.abs(minutes) % 60)
                + (minutes > 0 ? " west" : " east");
    }

    private static final class Region implements SkyRegion.Visitor<String> {
        @Override
        public String track(SkyRegion.Track track) {
            return track.label() + " (declination " + declination(track.declination()) + ") from " + hours(track.from())
                    + " to " + hours(track.to());
        }

        @Override
        public String above(SkyRegion.Above above) {
            String anywhere =
                    "anywhere above " + Math.round(above.lowestAltitude().degrees()) + "°";
            return above.toThePole()
                    ? anywhere + ", including the area around the pole"
                    : anywhere + ", except within " + Math.round(SkyRegion.Above.ABOUT_THE_POLE.degrees())
                            + "° of the pole";
        }
    }

    /** The figures of an item, one phrase each. */
    private static final class Figures implements WorkItem.Visitor<List<String>> {
        @Override
        public List<String> visualObservation(VisualObservation item) {
            List<String> parts = new ArrayList<>();
            parts.add("a field of " + read(item.field()));
            parts.add(TimeSpans.of(item.stay()) + " without touching the controls");
            item.goToWithin().ifPresent(within -> parts.add("go-to within " + read(within)));
            if (item.finding() instanceof VisualObservation.Finding.ByHand) {
                parts.add("pushed by hand, no go-to");
            }
            return parts;
        }

        @Override
        public List<String> imagingRun(ImagingRun item) {
            return List.of(
                    "exposures of " + TimeSpans.of(item.subExposure()) + ", " + TimeSpans.of(item.total()) + " in all",
                    "with " + camera(item.camera()),
                    item.guiding() instanceof Guiding.Guided guided
                            ? "guided on a star " + AngleWords.size(guided.starDistance()) + " away"
                            : "not guided",
                    "trails up to " + ArcsecondWords.of(item.tolerance()));
        }
    }
}
