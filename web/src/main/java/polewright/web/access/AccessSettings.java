package polewright.web.access;

import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import polewright.operations.device.PairedDevices;

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
 * @param certificate with which other devices are spoken to; empty: in plain http
 */
public record AccessSettings(
        Set<String> names,
        PairedDevices devices,
        Clock clock,
        Set<String> open,
        Set<String> uploads,
        Duration patience,
        Optional<ServerCertificate> certificate) {
    public AccessSettings {
        names = Set.copyOf(names);
        open = Set.copyOf(open);
        uploads = Set.copyOf(uploads);
    }

    /** In plain http. */
    public AccessSettings(
            Set<String> names,
            PairedDevices devices,
            Clock clock,
            Set<String> open,
            Set<String> uploads,
            Duration patience) {
        this(names, devices, clock, open, uploads, patience, Optional.empty());
    }

    /** Other devices are spoken to under this certificate alone; what they ask for in plain http leads there. */
    public AccessSettings with(ServerCertificate own) {
        return new AccessSettings(names, devices, clock, open, uploads, patience, Optional.of(own));
    }
}
