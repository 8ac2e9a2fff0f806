package polewright.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import polewright.operations.device.PairedDevice;
import polewright.operations.device.PairedDevices;
import polewright.report.text.DeviceWords;
import polewright.web.form.DeviceForms;
import polewright.web.view.Section;

/** Lists the paired devices, with a way to revoke each. The pairing code stays on the laptop's screen. */
final class DevicesPage implements Page {
    @Override
    public String path() {
        return Pages.DEVICES;
    }

    @Override
    public String name() {
        return "Devices";
    }

    @Override
    public String address(PageRequest request) {
        return path();
    }

    @Override
    public List<Section> sections(PageRequest request) {
        List<PairedDevice> devices =
                new PairedDevices(request.session().workbench().dataFolder()).all();
        List<Section> sections = new ArrayList<>();
        sections.add(new Section.Words(
                "",
                devices.isEmpty()
                        ? List.of(DeviceWords.NONE)
                        : devices.stream().map(DeviceWords::line).toList()));
        sections.add(new Section.Words("", List.of(DeviceWords.HOW_TO_PAIR)));
        if (!devices.isEmpty()) {
            List<Section.Press> presses = new ArrayList<>();
            devices.forEach(device -> presses.add(press(request, device.name(), device.id())));
            presses.add(press(request, "All of them, including this one", "all"));
            sections.add(new Section.Presses("Revoke", presses));
        }
        return sections;
    }

    private static Section.Press press(PageRequest request, String label, String device) {
        return new Section.Press(label, Forms.fresh(request, DeviceForms.REVOKE, Map.of("device", device)));
    }
}
