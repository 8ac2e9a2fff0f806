package polewright.operations.device;

import java.util.List;
import polewright.operations.action.Action;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Effect;

/** Actions on paired devices. */
public final class DeviceActions {
    public static final Argument<String> DEVICE = Argument.positional(
                    "device", "Device", "Its name or first word in the list; 'all' for all of them.", Words.plain(""))
            .required();

    public static final Action REVOKE = Action.having(
                    "devices-revoke",
                    List.of("devices", "revoke"),
                    "Revoke a device",
                    "It must be paired again to come back. A running server applies it at once.",
                    (Effect.Revoking) entries -> entries.of(DEVICE))
            .taking(DEVICE)
            .sentBy("Revoke")
            .forExample("", "all");

    private DeviceActions() {}

    /** All of them. */
    public static List<Action> all() {
        return List.of(REVOKE);
    }
}
