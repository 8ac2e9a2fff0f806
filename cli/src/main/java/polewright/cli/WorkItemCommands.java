package polewright.cli;

import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.alignment.work.Guiding;
import polewright.alignment.work.ImagingRun;
import polewright.alignment.work.VisualObservation;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.operations.Workbench;
import polewright.operations.input.GuideStarInput;
import polewright.operations.input.TrailInput;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** Adds or removes a visual observation or an imaging run. */
final class WorkItemCommands {
    private static final double LONGEST_TYPED_SECONDS = 1e6;

    private WorkItemCommands() {}

    @Command(
            name = "look",
            description = "Add visual observing to tonight's work, or change the item of that name.",
            footer = {"", "For example:", "  polewright allow look saturn --eyepiece reticle --stay 20 --target saturn"
            })
    static final class AddLook extends WorkCommand {
        @Parameters(paramLabel = "NAME", description = "What to call it.")
        private String name;

        @Option(names = "--eyepiece", paramLabel = "OPTIC", description = "One of the rig's, for its field.")
        private @Nullable String eyepiece;

        @Option(names = "--field", paramLabel = "DEG", description = "True field width, instead of --eyepiece.")
        private @Nullable Double fieldDeg;

        @Option(
                names = "--stay",
                paramLabel = "MINUTES",
                description = "How long an object must stay in the field with the mount untouched. Default: 15.")
        private double stayMinutes = 15;

        @Option(
                names = "--go-to",
                paramLabel = "ARCMIN",
                description = "How far from the centre a go-to may land. Default: any distance.")
        private @Nullable Double goToArcmin;

        @Option(
                names = "--by-hand",
                description =
                        "No go-to: the tube is pushed from star to star, and the object kept in the middle half of"
                                + " the field.")
        private boolean byHand;

        @Mixin
        private RegionOptions region;

        AddLook(Workbench workbench) {
            super(workbench);
        }

        @Override
        List<String> notes() {
            return Stream.concat(region.notes().stream(), super.notes().stream())
                    .toList();
        }

        @Override
        Work work(Workbench bench, NightEvent.Begun begun, List<WorkItem> before) {
            Duration stay = span("--stay", stayMinutes, 60);
            return with(
                    before,
                    new VisualObservation(
                            named(name), field(begun.rig()), stay, finding(), region.region(bench, begun, stay)));
        }

        private VisualObservation.Finding finding() {
            if (goToArcmin == null) {
                return byHand ? new VisualObservation.Finding.ByHand() : new VisualObservation.Finding.Centred();
            }
            if (byHand) {
                throw new InputRefused("a look is either by hand or with go-to", "leave out --by-hand or --go-to");
            }
            return new VisualObservation.Finding.GoTo(Angle.ofArcminutes(goToArcmin));
        }

        private Angle field(Rig rig) {
            if (fieldDeg != null && eyepiece != null) {
                throw new InputRefused("the field is given twice", "give --field or --eyepiece, only one of them");
            }
            if (fieldDeg != null) {
                return Angle.ofDegrees(fieldDeg);
            }
            String has = rig.optics().stream().map(Optic::name).collect(Collectors.joining(", "));
            if (eyepiece == null) {
                throw new InputRefused(
                        "the field is not known",
                        has.isEmpty() ? "add --field DEG" : "add --field DEG, or --eyepiece with one of " + has);
            }
            return rig.optic(eyepiece)
                    .orElseThrow(() -> new InputRefused(
                            "the rig has no optic called '" + eyepiece + "'",
                            has.isEmpty() ? "give --field DEG" : "give --field DEG, or one of " + has))
                    .field();
        }
    }

    @Command(
            name = "shot",
            description = "Add imaging to tonight's work, or change the item of that name.",
            footer = {
                "",
                "For example:",
                "  polewright allow shot ring --exposure 120 --target \"M 57\" --guided 20",
                "  polewright allow shot wide --exposure 60 --focal-length 50 --pixel 4.3"
            })
    static final class AddShot extends WorkCommand {
        private static final double USUAL_TOTAL_MINUTES = 60;

        @Parameters(paramLabel = "NAME", description = "What to call it.")
        private String name;

        @Option(names = "--exposure", paramLabel = "SECONDS", required = true, description = "One exposure.")
        private double exposureSeconds;

        @Option(
                names = "--total",
                paramLabel = "MINUTES",
                description = "Total time from the first exposure to the end of the last. Default: 60.")
        private @Nullable Double totalMinutes;

        @Option(
                names = "--guided",
                paramLabel = "ARCMIN",
                arity = "0..1",
                converter = GuideStarInput.class,
                fallbackValue = GuideStarInput.USUAL,
                description =
                        "Guided, with the guide star this far from the centre of the picture. Default: 30, or just"
                                + " outside the picture.")
        private GuideStarInput.@Nullable Distance guideStar;

        @Option(
                names = "--tolerance",
                paramLabel = "TRAIL",
                converter = TrailInput.class,
                description = "Longest acceptable trail: 2.5 (arcseconds) or 2px. Default: the seeing, or 1.5 pixels if"
                        + " that is more.")
        private TrailInput.@Nullable Trail tolerance;

        @Option(names = "--seeing", paramLabel = "ARCSEC", description = "Seeing (FWHM of stars). Default: 3.")
        private double seeingArcsec = 3;

        @Mixin
        private CameraOptions camera;

        @Mixin
        private RegionOptions region;

        AddShot(Workbench workbench) {
            super(workbench);
        }

        @Override
        List<String> notes() {
            return Stream.concat(region.notes().stream(), super.notes().stream())
                    .toList();
        }

        @Override
        Work work(Workbench bench, NightEvent.Begun begun, List<WorkItem> before) {
            Camera with = camera.camera(begun.rig(), before);
            Duration exposure = span("--exposure", exposureSeconds, 1);
            Duration total = total(exposure);
            return with(
                    before,
                    new ImagingRun(
                            named(name),
                            with,
                            region.region(bench, begun, total),
                            exposure,
                            total,
                            guiding(with),
                            trail(with)));
        }

        private Duration total(Duration exposure) {
            if (totalMinutes != null) {
                return span("--total", totalMinutes, 60);
            }
            Duration usual = span("--total", USUAL_TOTAL_MINUTES, 60);
            return usual.compareTo(exposure) < 0 ? exposure : usual;
        }

        private Guiding guiding(Camera with) {
            return guideStar == null ? new Guiding.Unguided() : new Guiding.Guided(guideStar.with(with));
        }

        private Angle trail(Camera with) {
            if (!(seeingArcsec > 0 && seeingArcsec <= 30)) {
                throw new InputRefused(
                        "a seeing of " + PlainNumber.asTyped(seeingArcsec)
                                + " arcseconds must be more than 0 and at most 30",
                        "give the width of a star's image; 3 is usual");
            }
            return tolerance == null
                    ? ImagingRun.usualTolerance(with, Angle.ofArcseconds(seeingArcsec))
                    : tolerance.with(with);
        }
    }

    @Command(name = "drop", description = "Remove a look or shot from tonight's work.")
    static final class Drop extends WorkCommand {
        @Parameters(paramLabel = "NAME", arity = "1..*", description = "What it is called.")
        private List<String> name;

        Drop(Workbench workbench) {
            super(workbench);
        }

        @Override
        Work work(Workbench bench, NightEvent.Begun begun, List<WorkItem> before) {
            String dropped = String.join(" ", name);
            List<WorkItem> left = before.stream()
                    .filter(item -> !item.name().equalsIgnoreCase(dropped)
                            && !item.name().equalsIgnoreCase("a " + dropped))
                    .toList();
            if (left.size() == before.size()) {
                throw new InputRefused(
                        "nothing in tonight's work is called '" + dropped + "'",
                        before.isEmpty()
                                ? "say what tonight is for, with polewright allow --for"
                                : "drop one of "
                                        + before.stream().map(WorkItem::name).collect(Collectors.joining(", ")));
            }
            if (left.isEmpty()) {
                throw new InputRefused(
                        "'" + dropped + "' is the only item of tonight's work",
                        "set other work with polewright allow --for, or a plain limit with polewright allow 5");
            }
            return new Work(left);
        }
    }

    private static String named(String name) {
        if (name.isBlank()) {
            throw new InputRefused("the name is empty", "give a short name");
        }
        return name.strip();
    }

    private static Duration span(String option, double count, int secondsEach) {
        if (!(Math.abs(count * secondsEach) <= LONGEST_TYPED_SECONDS)) {
            throw new InputRefused(
                    option + " " + PlainNumber.asTyped(count) + " is longer than a night", "give it again");
        }
        return Duration.ofMillis(Math.round(count * secondsEach * 1000));
    }
}
