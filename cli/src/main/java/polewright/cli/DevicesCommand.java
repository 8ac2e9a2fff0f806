package polewright.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import polewright.operations.Workbench;
import polewright.operations.action.Effect;
import polewright.operations.device.DeviceActions;
import polewright.operations.device.PairedDevice;
import polewright.operations.device.PairedDevices;
import polewright.report.text.DeviceWords;

@Command(
        name = "devices",
        description = "List or revoke devices paired through polewright serve --share.",
        footer = {"", "For example:", "  polewright devices", "  polewright devices revoke all"})
final class DevicesCommand implements Callable<Integer> {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Workbench workbench;

    @Mixin
    private Output output;

    private DevicesCommand(Workbench workbench) {
        this.workbench = workbench;
    }

    static CommandLine of(Workbench workbench, CommandLine.IFactory factory) {
        return new CommandLine(new DevicesCommand(workbench), factory).addSubcommand(Revoke.of(workbench));
    }

    @Override
    public Integer call() {
        List<PairedDevice> devices = new PairedDevices(workbench.dataFolder()).all();
        if (output.isJson()) {
            output.print(workbench, json(devices));
        } else if (devices.isEmpty()) {
            output.say(workbench, DeviceWords.NONE);
        } else {
            output.say(workbench, devices.stream().map(DeviceWords::line).toList());
        }
        return 0;
    }

    private static ArrayNode json(List<PairedDevice> devices) {
        ArrayNode array = JSON.createArrayNode();
        devices.forEach(device -> array.addObject()
                .put("id", device.id())
                .put("name", device.name())
                .put("paired", device.paired().toString())
                .put("last_seen", device.lastSeen().toString()));
        return array;
    }

    /** Revokes a device. */
    static final class Revoke implements Callable<Integer> {
        private final Workbench workbench;
        private final ActionArguments arguments = new ActionArguments(DeviceActions.REVOKE);

        @Mixin
        private Output output;

        private Revoke(Workbench workbench) {
            this.workbench = workbench;
        }

        static CommandLine of(Workbench workbench) {
            Revoke command = new Revoke(workbench);
            return command.arguments.addedTo(command);
        }

        @Override
        public Integer call() {
            Effect.Revoking effect = (Effect.Revoking) arguments.action().effect();
            List<PairedDevice> gone =
                    new PairedDevices(workbench.dataFolder()).revoke(effect.device(arguments.entries()));
            if (output.isJson()) {
                output.print(workbench, json(gone));
            } else if (gone.isEmpty()) {
                output.say(workbench, "There was no paired device.");
            } else {
                output.say(
                        workbench,
                        gone.stream().map(d -> "Revoked: " + d.name() + ".").toList());
            }
            return 0;
        }
    }
}
