package polewright.web.form;

import static polewright.web.form.Field.positional;

import java.util.List;
import polewright.web.form.Field.Words;

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
                            new Words())
                    .required()),
            "Revoke",
            false,
            CommandForm.Kind.DEVICES);

    private DeviceForms() {}
}
