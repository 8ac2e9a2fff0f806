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
        description = "The devices that were let in by polewright serve --share.",
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

    @Command(name = "revoke", description = "Let a device in no more; a server that runs minds it at once.")
    static final class Revoke implements Callable<Integer> {
        private static final String ALL = "all";

        private final Workbench workbench;

        @Parameters(paramLabel = "DEVICE", description = "Its name or its first word in the list; all for every one.")
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
                        "no device is called '" + device + "': take a name, or its first word, from the list.");
            }
            if (output.isJson()) {
                output.print(workbench, json(gone));
            } else if (gone.isEmpty()) {
                output.say(workbench, "No device was let in; none is now.");
            } else {
                output.say(
                        workbench,
                        gone.stream()
                                .map(d -> "No longer let in: " + d.name() + ".")
                                .toList());
            }
            return 0;
        }
    }
}
