package polewright.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import polewright.operations.OperationFailed;
import polewright.operations.Workbench;
import polewright.operations.device.PairedDevice;
import polewright.operations.device.PairedDevices;
import polewright.report.text.DeviceWords;

@Command(
        name = "devices",
        description = "List or revoke devices paired through polewright serve --share.",
        footer = {"", "For example:", "  polewright devices", "  polewright devices revoke all"},
        subcommands = {DevicesCommand.Revoke.class})
final class DevicesCommand implements Callable<Integer> {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Workbench workbench;

    @Mixin
    private Output output;

    DevicesCommand(Workbench workbench) {
        this.workbench = workbench;
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

    @Command(name = "revoke", description = "Revoke a device; a running server applies it at once.")
    static final class Revoke implements Callable<Integer> {
        private static final String ALL = "all";

        private final Workbench workbench;

        @Parameters(
                paramLabel = "DEVICE",
                description = "Its name, or its first word in the list; 'all' for all of" + " them.")
        private String device;

        @Mixin
        private Output output;

        Revoke(Workbench workbench) {
            this.workbench = workbench;
        }

        @Override
        public Integer call() {
            PairedDevices devices = new PairedDevices(workbench.dataFolder());
            List<PairedDevice> gone = device.equals(ALL) ? devices.revokeAll() : devices.revoke(device);
            if (gone.isEmpty() && !device.equals(ALL)) {
                throw new OperationFailed(
                        "no paired device is called '" + device + "'. Take a name, or its first word, from the list.");
            }
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
