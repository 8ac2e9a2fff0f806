package polewright.report.text;

import polewright.operations.device.PairedDevice;

/** The paired devices, in words. */
public final class DeviceWords {
    public static final String NONE = "No paired devices.";

    /** How to pair another one. */
    public static final String HOW_TO_PAIR =
            "To pair a device, run polewright serve --share on the laptop. Its terminal shows the code.";

    private DeviceWords() {}

    /** {@code 3f2a  phone, last here on 2026-11-26}. */
    public static String line(PairedDevice device) {
        return device.id() + "  " + device.name() + ", last here on " + device.lastSeen();
    }
}
