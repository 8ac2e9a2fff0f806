package polewright.web.access;

import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import polewright.operations.device.PairedDevices;

/**
 * The settings of {@link AccessControl}.
 *
 * @param names the machine's addresses and names answered to besides the loopback ones, in lower case, without port;
 *     IPv6 in brackets; empty unless shared
 * @param devices the paired devices
 * @param clock the time now
 * @param open paths open to unpaired devices besides {@code /pair}: the assets of the pairing page
 * @param uploads paths whose body may be a frame
 * @param patience how long a client may take to send a request's head, and how long a connection may be silent
 * @param certificate the certificate for other devices; empty for plain http
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

    /** Settings for plain http. */
    public AccessSettings(
            Set<String> names,
            PairedDevices devices,
            Clock clock,
            Set<String> open,
            Set<String> uploads,
            Duration patience) {
        this(names, devices, clock, open, uploads, patience, Optional.empty());
    }

    /** Settings under which other devices are served with this certificate only; plain http redirects to it. */
    public AccessSettings with(ServerCertificate own) {
        return new AccessSettings(names, devices, clock, open, uploads, patience, Optional.of(own));
    }
}
