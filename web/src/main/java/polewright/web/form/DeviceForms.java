package polewright.web.form;

import static polewright.web.form.Field.positional;

import java.util.List;
import polewright.web.form.Field.Words;

/** Who may come in. */
public final class DeviceForms {
    public static final CommandForm REVOKE = new CommandForm(
            "devices-revoke",
            "Let a device in no more",
            "To come back it must be paired again.",
            List.of("devices", "revoke"),
            List.of(positional(
                            "device", "Device", "Its name or first word in the list; all for every one.", new Words())
                    .required()),
            "Let it in no more",
            false,
            CommandForm.Kind.DEVICES);

    private DeviceForms() {}
}
