package polewright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.drawing.Palette;
import polewright.drawing.chart.FieldChart;
import polewright.drawing.chart.FieldChartDrawing;
import polewright.drawing.chart.GuideStar;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.input.BodyFinder;
import polewright.operations.input.FileInput;
import polewright.planning.tonight.Evening;
import polewright.report.json.ChartJson;
import polewright.report.text.ChartWords;
import polewright.report.text.ReachWords;
import polewright.report.text.SunCaution;
import polewright.sky.angle.Angle;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.body.SunGuard;
import polewright.sky.place.ObservingMoment;

@Command(
        name = "chart",
        description = "How to find an object: the way from a bright star, and the field as your finder shows it.",
        footer = {
            "",
            "For example:",
            "  polewright chart \"M 13\" --picture m13.svg",
            "  polewright chart uranus --optic eyepiece --dark --picture uranus.svg"
        })
final class ChartCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Parameters(
            paramLabel = "BODY",
            converter = BodyFinder.class,
            description = "moon, a planet, a star (vega, \"alp Lyr\"), an object (\"M 31\"), or RA,DEC in degrees.")
    private SkyBody body;

    @Option(
            names = "--optic",
            paramLabel = "NAME",
            description = "Which of the rig's finders and eyepieces. Default: the widest, the finder.")
    private @Nullable String opticName;

    @Option(
            names = "--faintest",
            paramLabel = "MAG",
            description = "Magnitude limit, 1 to 12. Default: by the width of the field.")
    private @Nullable Double faintest;

    @Option(
            names = "--picture",
            paramLabel = "FILE.svg",
            converter = FileInput.class,
            description = "Draw the field, turned and mirrored as you see it.")
    private @Nullable Path picture;

    @Option(names = "--dark", description = "Draw in dim red on black.")
    private boolean dark;

    @Mixin
    private EveningOptions evening;

    @Mixin
    private Output output;

    ChartCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        if (body == SolarSystemBody.SUN) {
            throw new WrongUsage("never look for the Sun through a finder: cap it. The Sun burns an eye in an instant;"
                    + " only a proper filter over the front of the tube makes it safe.");
        }
        if (faintest != null && !(faintest >= 1 && faintest <= 12)) {
            throw new WrongUsage("a magnitude limit of " + faintest + " is outside 1 to 12, the range of the atlas.");
        }
        EveningOptions.Typed typed = evening.typed(workbench);
        Evening tonight = typed.evening();
        Optic optic = optic(tonight.rig());
        ObservingMoment moment = tonight.moment(tonight.now());
        FieldChart chart = FieldChart.of(
                body,
                moment,
                optic.field(),
                optic.view(),
                faintest == null ? FieldChart.usualLimit(optic.field()) : faintest);
        Optional<GuideStar> guide = GuideStar.nearest(chart);
        List<String> notes = notes(tonight, chart);
        if (output.isJson()) {
            output.print(workbench, ChartJson.of(chart, optic.name(), guide, notes));
        } else {
            output.say(workbench, ChartWords.of(chart, optic.name(), guide));
            output.say(workbench, notes);
        }
        if (picture != null) {
            String svg = FieldChartDrawing.svg(
                    chart,
                    optic.name(),
                    beneath(tonight.rig(), optic),
                    typed.zone(),
                    dark ? Palette.DARK : Palette.LIGHT);
            ResultFile.write(picture, svg.getBytes(StandardCharsets.UTF_8));
            output.mention(workbench, "Drawn: " + picture);
        } else {
            output.mention(workbench, "To draw it: --picture FILE.svg.");
        }
        return 0;
    }

    private Optic optic(Rig rig) {
        if (opticName == null) {
            return rig.widestOptic()
                    .orElseThrow(() ->
                            new OperationFailed("the rig has no optics. Add a finder or an eyepiece to the rig file."));
        }
        return rig.optic(opticName)
                .orElseThrow(() -> new WrongUsage("the rig has no optic '" + opticName + "'; it has "
                        + rig.optics().stream().map(Optic::name).collect(Collectors.joining(", ")) + "."));
    }

    /** The widest field that is narrower than the one drawn: where to bring the target for the eyepiece. */
    private static Angle beneath(Rig rig, Optic drawn) {
        return rig.optics().stream()
                .map(Optic::field)
                .filter(field -> field.compareTo(drawn.field()) < 0)
                .max(Comparator.naturalOrder())
                .orElse(Angle.ZERO);
    }

    private static List<String> inTheLight(ObservingMoment moment) {
        if (GuideStar.areStarsOut(moment)) {
            return List.of();
        }
        String tooLight = "NOTE  Too light to hop from a star. Wait for dusk, or use go-to or the setting circles.";
        return SunGuard.at(moment).isSunUp()
                ? List.of(
                        tooLight,
                        "CARE  The Sun is up. Keep tube and finder capped until they have stopped moving, and stay"
                                + " 30° from the Sun on"
                                + " the way.")
                : List.of(tooLight);
    }

    private List<String> notes(Evening tonight, FieldChart chart) {
        ObservingMoment moment = chart.moment();
        List<String> notes = new ArrayList<>();
        SunCaution.near(moment, moment.apparent(chart.hourAngle())).forEach(remark -> notes.add(remark.line()));
        if (chart.sky().middle().altitude().radians() >= 0) {
            notes.addAll(inTheLight(moment));
        }
        tonight.reach()
                .barrier(chart.hourAngle())
                .ifPresent(barrier -> notes.add("NOTE  Out of reach now: " + ReachWords.of(barrier) + "."));
        return notes;
    }
}
