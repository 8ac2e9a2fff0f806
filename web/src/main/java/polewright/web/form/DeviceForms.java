package polewright.web.form;

import java.util.List;
import polewright.operations.device.DeviceActions;

/** Forms that manage paired devices. */
public final class DeviceForms {
    public static final CommandForm REVOKE = CommandForm.of(DeviceActions.REVOKE);

    private DeviceForms() {}

    static List<CommandForm> all() {
        return List.of(REVOKE);
    }
}
