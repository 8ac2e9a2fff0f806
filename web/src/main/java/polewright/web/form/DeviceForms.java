package polewright.web.form;

import static polewright.operations.action.Argument.positional;

import java.util.List;
import java.util.Optional;

/** Forms that manage paired devices. */
public final class DeviceForms {
    public static final CommandForm REVOKE = new CommandForm(
            "devices-revoke",
            "Revoke a device",
            "It must be paired again to come back.",
            List.of("devices", "revoke"),
            List.of(positional(
                            "device",
                            "Device",
                            "Its name or first word in the list; 'all' for all of them.",
                            FieldTypes.WORDS)
                    .required()),
            "Revoke",
            false,
            CommandForm.Kind.DEVICES,
            Optional.empty());

    private DeviceForms() {}
}
