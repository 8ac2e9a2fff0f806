package polewright.app.web.door;

import java.time.Clock;
import java.time.Duration;
import java.util.Set;
import polewright.app.device.PairedDevices;

/**
 * How the door is kept.
 *
 * @param names the machine's addresses and names that are answered to besides the loopback ones, in lower case, without
 *     port; IPv6 in brackets; empty unless shared
 * @param devices who was let in
 * @param clock the time now
 * @param open paths for the unpaired besides {@code /pair}: what the pairing page looks like
 * @param uploads paths whose body may be a frame
 * @param patience how long a client may take over a request's head, and how long a connection may be silent
 */
public record DoorSettings(
        Set<String> names,
        PairedDevices devices,
        Clock clock,
        Set<String> open,
        Set<String> uploads,
        Duration patience) {
    public DoorSettings {
        names = Set.copyOf(names);
        open = Set.copyOf(open);
        uploads = Set.copyOf(uploads);
    }
}
