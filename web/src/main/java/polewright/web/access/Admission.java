package polewright.web.access;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import polewright.image.decode.DecodeLimits;

/** The decision on a request. */
public sealed interface Admission {
    /** The request is accepted. */
    record Admitted() implements Admission {}

    /** The device must be paired first. */
    record NeedsPairing() implements Admission {}

    /** The client is redirected to an encrypted connection. */
    record ToSecure(String address) implements Admission {}

    /** The request is refused. */
    record Refused(int status, String sentence) implements Admission {}

    /**
     * The security-relevant properties of a request.
     *
     * @param target the request's target as it was sent
     * @param path the decoded path
     * @param hosts every Host header
     * @param origins every Origin header
     * @param fetchSite Sec-Fetch-Site, or empty
     * @param loopback whether the connection comes from this machine
     * @param paired whether it carries a paired device's token
     * @param contentLength in bytes, -1 if not given
     * @param coding Transfer-Encoding, or empty
     * @param secure whether it came encrypted
     */
    record Asking(
            String method,
            String target,
            String path,
            List<String> hosts,
            List<String> origins,
            Optional<String> fetchSite,
            boolean loopback,
            boolean paired,
            long contentLength,
            Optional<String> coding,
            boolean secure) {}

    /** Largest form, bytes. */
    long FORM_BYTES = 64 * 1024;

    /** Largest uploaded frame, bytes. */
    long FRAME_BYTES = DecodeLimits.OF_AN_UPLOAD.mostFileBytes();

    /** This machine's names for itself. */
    Set<String> LOOPBACK_NAMES = Set.of("localhost", "127.0.0.1", "[::1]");

    /**
     * Decides from the request alone.
     *
     * @param names the names and addresses that this server answers to besides the loopback ones, in lower case
     * @param port the port it listens on
     * @param open paths that an unpaired device may request
     * @param uploads paths whose body may be a frame
     * @param encrypted whether other devices must connect encrypted
     */
    static Admission of(
            Asking asking, Set<String> names, int port, Set<String> open, Set<String> uploads, boolean encrypted) {
        if (asking.hosts().size() != 1) {
            return new Refused(400, "A request names exactly one host. Open the address that the terminal shows.");
        }
        String host = asking.hosts().get(0).toLowerCase(Locale.ROOT);
        String suffix = ":" + port;
        String name =
                host.endsWith(suffix) ? host.substring(0, host.length() - suffix.length()) : port == 80 ? host : "";
        boolean isLoopbackName = LOOPBACK_NAMES.contains(name);
        if (!isLoopbackName && !names.contains(name)) {
            return new Refused(421, "This server does not go by that name. Open the address that the terminal shows.");
        }
        if (!asking.target().startsWith("/")) {
            return new Refused(400, "A request begins with a path. Open the address that the terminal shows.");
        }
        boolean isThisMachine = asking.loopback() && isLoopbackName;
        boolean isWrite = !asking.method().equals("GET") && !asking.method().equals("HEAD");
        String site = asking.fetchSite().orElse("");
        if ((isWrite && !isOwn(asking, host, site)) || (!isWrite && isForeignRead(asking, site))) {
            return new Refused(
                    403, "That request came from another site's page. Open Polewright's own page and do it there.");
        }
        if (encrypted && !asking.secure() && !isThisMachine) {
            return isWrite
                    ? new Refused(403, "Other devices must use an encrypted connection: open https://" + host + "/")
                    : new ToSecure("https://" + host + "/");
        }
        // Nothing more is read from an unknown device, however much it sends.
        if (!isThisMachine && !asking.paired() && !open.contains(asking.path())) {
            return new NeedsPairing();
        }
        long limit = uploads.contains(asking.path()) ? FRAME_BYTES : FORM_BYTES;
        if (asking.contentLength() > limit) {
            return new Refused(
                    413,
                    "That is larger than the " + (limit >= 1 << 20 ? limit / (1 << 20) + " MiB" : limit / 1024 + " KiB")
                            + " limit. Send something smaller.");
        }
        // No browser sends a form without its length, and without one the size limit cannot be checked in advance. An
        // upload is measured as it arrives.
        if (asking.coding().isPresent() && !uploads.contains(asking.path())) {
            return new Refused(411, "The request has no length. Send it from Polewright's own page.");
        }
        return new Admitted();
    }

    private static boolean isOwn(Asking asking, String host, String site) {
        List<String> origins = asking.origins();
        String own = (asking.secure() ? "https://" : "http://") + host;
        if (origins.isEmpty()) {
            return site.equals("same-origin") || site.equals("none");
        }
        return origins.size() == 1 && origins.get(0).toLowerCase(Locale.ROOT).equals(own);
    }

    /** A link from another site may open a whole page; nothing else may be fetched from there. */
    private static boolean isForeignRead(Asking asking, String site) {
        return site.equals("cross-site")
                && !asking.path().equals("/")
                && !asking.path().equals("/pair");
    }
}
