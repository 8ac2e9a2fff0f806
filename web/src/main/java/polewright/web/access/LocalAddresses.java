package polewright.web.access;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The addresses at which other devices in the same network reach this machine. */
public final class LocalAddresses {
    // Networks inside the machine, which no phone can reach.
    private static final List<String> INSIDE =
            List.of("docker", "veth", "br-", "virbr", "vmnet", "vboxnet", "tun", "tap");

    private LocalAddresses() {}

    /** IPv4 addresses, the most likely first; empty without a network. */
    public static List<String> found() {
        List<InetAddress> addresses = new ArrayList<>();
        try {
            for (NetworkInterface network : Collections.list(NetworkInterface.getNetworkInterfaces())) {
                boolean isInside = INSIDE.stream().anyMatch(network.getName()::startsWith);
                if (network.isUp() && !network.isLoopback() && !network.isVirtual() && !isInside) {
                    addresses.addAll(Collections.list(network.getInetAddresses()));
                }
            }
        } catch (SocketException e) {
            return List.of();
        }
        return addresses.stream()
                .filter(Inet4Address.class::isInstance)
                .filter(address -> !address.isLoopbackAddress())
                // A link-local address, which the machine assigned itself, comes last.
                .sorted(Comparator.comparing(InetAddress::isLinkLocalAddress)
                        .thenComparing(address -> !address.isSiteLocalAddress()))
                .map(InetAddress::getHostAddress)
                .toList();
    }

    /**
     * Every name a request may use for this machine: its addresses, its host name, and its name in multicast DNS (RFC
     * 6762).
     */
    public static Set<String> names() {
        Set<String> names = new LinkedHashSet<>(found());
        try {
            String host = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
            names.add(host);
            if (!host.contains(".")) {
                names.add(host + ".local");
            }
        } catch (UnknownHostException nameless) {
            // Then only the addresses are used.
        }
        return names;
    }
}
