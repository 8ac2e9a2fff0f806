package polewright.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.allowance.ItemTolerance;
import polewright.alignment.work.Work;
import polewright.alignment.work.WorkItem;
import polewright.alignment.work.WorkPreset;
import polewright.mount.rig.Rig;
import polewright.operations.Workbench;
import polewright.operations.action.ActionContext;
import polewright.operations.input.LimitInput;
import polewright.operations.input.PresetInput;
import polewright.report.json.ZoneJson;
import polewright.report.text.WorkWords;
import polewright.report.text.ZoneWords;
import polewright.session.NightState;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

@Command(
        name = "allow",
        description = {
            "Set what tonight is for, and with it how far off the pole the axis may be.",
            "Without arguments: show both."
        },
        footer = {
            "",
            "For example:",
            "  polewright allow",
            "  polewright allow --for long guided subs",
            "  polewright allow --for short subs --focal-length 1200 --pixel 3.76",
            "  polewright allow shot m42 --exposure 60 --target \"M 42\" --at 2026-01-15T21:00Z",
            "  polewright allow look planets --field 0.3 --stay 20",
            "  polewright allow 3"
        },
        subcommands = {WorkItemCommands.AddLook.class, WorkItemCommands.AddShot.class, WorkItemCommands.Drop.class})
final class AllowCommand extends WorkCommand {
    @Parameters(
            paramLabel = "ARCMIN",
            arity = "0..1",
            converter = LimitInput.class,
            description = "A plain limit in arcminutes on the sky, whatever the work.")
    private @Nullable Double arcmin;

    @Option(
            names = "--for",
            paramLabel = "WORK",
            arity = "1..*",
            parameterConsumer = FreeTextWords.class,
            description =
                    "Replace tonight's work: a casual look, a look by hand, planets at high power, short subs, or long"
                            + " guided subs.")
    private @Nullable List<String> purpose;

    @Option(
            names = "--also",
            paramLabel = "WORK",
            arity = "1..*",
            parameterConsumer = FreeTextWords.class,
            description = "Like --for, but added to tonight's work.")
    private @Nullable List<String> more;

    @Mixin
    private CameraOptions camera;

    private List<WorkItem> dropped = List.of();

    AllowCommand(Workbench workbench) {
        super(workbench);
    }

    @Override
    public Integer call() {
        if (arcmin == null && purpose == null && more == null) {
            if (camera.areGiven()) {
                throw new WrongUsage(
                        "a camera is given, but not the work. Add --for short subs or --for long guided subs.");
            }
            return show();
        }
        return super.call();
    }

    private int show() {
        NightState night = FixCommand.tonight(log(), bench());
        NightEvent.Begun begun = night.begun();
        List<ItemTolerance> tolerances = night.work()
                .map(work -> ItemTolerance.each(begun.site(), begun.weather(), begun.rig(), work))
                .orElse(List.of());
        if (output().isJson()) {
            output().print(bench(), ZoneJson.full(night.allowance(), tolerances));
        } else {
            output().say(bench(), ZoneWords.full(night, tolerances));
        }
        afterwards(night);
        return 0;
    }

    @Override
    List<NightEvent> events(ActionContext context) {
        if (arcmin == null) {
            return super.events(context);
        }
        if (purpose != null || more != null || camera.areGiven()) {
            throw new InputRefused(
                    "a plain limit does not depend on the work", "give the arcminutes alone, or leave them out");
        }
        dropped = context.before().work().map(Work::items).orElse(List.of());
        return List.of(new NightEvent.AllowanceSet(new DiscAllowance(Angle.ofArcminutes(arcmin))));
    }

    @Override
    Work work(Workbench bench, NightEvent.Begun begun, List<WorkItem> before) {
        Work work = purpose == null ? null : new Work(List.of(item(purpose, begun.rig(), before)));
        if (more == null) {
            return Objects.requireNonNull(work);
        }
        return with(work == null ? before : work.items(), item(more, begun.rig(), before));
    }

    private WorkItem item(List<String> words, Rig rig, List<WorkItem> before) {
        WorkPreset preset = PresetInput.of(words);
        return camera.areGiven() ? preset.with(camera.camera(rig, before)) : preset.with(CamerasOfWork.in(rig, before));
    }

    @Override
    String logged() {
        return arcmin == null ? super.logged() : "allowance set";
    }

    @Override
    List<String> notes() {
        return dropped.isEmpty() ? super.notes() : List.of("NOTE  No longer used: " + WorkWords.names(dropped) + ".");
    }

    @Override
    Optional<ObjectNode> foundJson() {
        return arcmin == null ? super.foundJson() : Optional.empty();
    }
}
