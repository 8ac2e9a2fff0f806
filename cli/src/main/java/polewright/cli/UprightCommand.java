package polewright.cli;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import polewright.alignment.allowance.ExposureLimits;
import polewright.alignment.work.WorkPreset;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Camera;
import polewright.mount.rig.Rig;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.action.Entries;
import polewright.operations.work.CameraArguments;
import polewright.planning.tonight.Evening;
import polewright.planning.tonight.KnownAxis;
import polewright.planning.tonight.UprightExposures;
import polewright.report.json.UprightJson;
import polewright.report.text.UprightWords;
import polewright.sky.InputRefused;

@Command(
        name = "upright",
        description = "For a fork set upright: exposure limits across the sky, and whether the wedge is worthwhile.")
final class UprightCommand implements Callable<Integer> {
    private static final double USUAL_EXPOSURE_SECONDS = 30;
    // As good as a quick set-up by eye (common practice), if nothing better is known.
    private static final KnownAxis QUICKLY_SET =
            new KnownAxis(AxisOffset.ofArcminutes(3.5, 3.5), new OffsetCovariance(0.01, 0, 0.01));

    private final Workbench workbench;

    @Option(names = "--exposure", paramLabel = "S", description = "The single exposure you want. Default: 30 s.")
    private double exposureSeconds = USUAL_EXPOSURE_SECONDS;

    private final Map<String, Object> typedCamera = new HashMap<>();

    @Mixin
    private EveningOptions evening;

    @Mixin
    private Output output;

    UprightCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    static CommandLine of(Workbench workbench, CommandLine.IFactory factory) {
        UprightCommand command = new UprightCommand(workbench);
        CommandSpec spec = CommandSpec.forAnnotatedObject(command, factory);
        ActionOptions.add(spec, CameraArguments.ALL, command.typedCamera);
        return new CommandLine(spec, factory);
    }

    @Override
    public Integer call() {
        if (!(exposureSeconds > 0 && exposureSeconds <= UprightExposures.LONGEST.toSeconds())) {
            throw new WrongUsage("an exposure of " + exposureSeconds + " s is outside 0 to 3600.");
        }
        Evening tonight = evening.typed(workbench).evening();
        Camera camera = camera(tonight.rig());
        Duration wanted = Duration.ofMillis(Math.round(exposureSeconds * 1000));
        UprightExposures upright = UprightExposures.of(tonight.site(), camera);
        KnownAxis axis = tonight.axis().orElse(QUICKLY_SET);
        ExposureLimits.Limit onWedge = ExposureLimits.longest(
                tonight.site(),
                tonight.weather(),
                tonight.rig(),
                WorkPreset.SHORT_SUBS.with(camera),
                axis.offset(),
                axis.covariance());
        if (output.isJson()) {
            output.print(workbench, UprightJson.of(upright, camera, wanted, onWedge));
        } else {
            output.say(
                    workbench,
                    UprightWords.of(
                            upright, camera, wanted, onWedge, tonight.axis().isPresent()));
        }
        return 0;
    }

    private Camera camera(Rig rig) {
        Entries typed = Entries.ofValues(typedCamera);
        if (CameraArguments.areGiven(typed)) {
            try {
                return CameraArguments.camera(typed, rig, List.of());
            } catch (InputRefused refused) {
                throw new WrongUsage(TerminalWording.GENERAL.of(String.valueOf(refused.getMessage())));
            }
        }
        Optional<Camera> main = WorkPreset.mainCamera(rig);
        return main.orElseThrow(
                () -> new OperationFailed("the rig has no camera, and by eye field rotation does not matter."
                        + " Add --focal-length MM --pixel MICRONS, or the camera to the rig file."));
    }
}
