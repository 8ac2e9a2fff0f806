package polewright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.drawing.Palette;
import polewright.drawing.mount.HomeDrawing;
import polewright.mount.rig.MountKind;
import polewright.operations.Workbench;
import polewright.report.json.GroundJson;
import polewright.report.text.GroundWords;
import polewright.session.GroundPlan;
import polewright.session.event.NightEvent;
import polewright.sky.place.ObservingMoment;
import polewright.sky.time.LeapSeconds;

@Command(name = "ground", description = "What to set up before dark: north, level, wedge, home position.")
final class GroundCommand implements Callable<Integer> {
    private final Workbench workbench;

    @Option(
            names = "--mount",
            paramLabel = "KIND",
            description = "fork-on-wedge, fork-upright, german or tracker. Default: the rig's.")
    private @Nullable MountKind kind;

    @Option(
            names = "--drawing",
            paramLabel = "FILE.svg",
            description = "Also draw the home position, seen from the side.")
    private @Nullable Path drawing;

    @Option(names = "--dark", description = "Draw in dim red on black.")
    private boolean dark;

    @Mixin
    private EarthRotationOption earthRotation;

    @Mixin
    private SkyOptions sky;

    @Mixin
    private RigOption rig;

    @Mixin
    private LogOption log;

    @Mixin
    private Output output;

    GroundCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public Integer call() {
        Optional<NightEvent.Begun> remembered = log.lastBegun(workbench);
        ObservingMoment moment = sky.moment(workbench, remembered, earthRotation.ut1MinusUtcSeconds());
        MountKind mount = kind == null ? rig.rig(remembered).kind() : kind;
        GroundPlan plan = GroundPlan.of(moment);
        if (output.isJson()) {
            output.print(workbench, GroundJson.of(plan, mount));
        } else {
            output.say(workbench, GroundWords.of(plan, mount));
            LeapSeconds.note(plan.at()).ifPresent(note -> output.say(workbench, note));
        }
        if (drawing != null) {
            draw(mount, moment, drawing);
        }
        return 0;
    }

    private void draw(MountKind mount, ObservingMoment moment, Path file) {
        String svg = HomeDrawing.svg(mount, moment.site(), dark ? Palette.DARK : Palette.LIGHT);
        ResultFile.write(file, svg.getBytes(StandardCharsets.UTF_8));
        output.mention(workbench, "Drawn: " + file);
    }
}
