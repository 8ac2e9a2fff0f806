package polewright.web.access;

import java.util.Map;

/**
 * Headers of every response: nothing from elsewhere is shown or run in a page, and no page elsewhere can frame ours.
 */
final class GuardHeaders {
    static final Map<String, String> ALL = Map.of(
            "Content-Security-Policy",
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'"
                    + " data: blob:; media-src 'self' data:; connect-src 'self'; form-action 'self'; base-uri 'none';"
                    + " frame-ancestors 'none'; manifest-src 'self'",
            "X-Content-Type-Options",
            "nosniff",
            // Under no-referrer a browser sends "Origin: null" with our own forms (Fetch standard, append an Origin
            // header).
            "Referrer-Policy",
            "same-origin",
            "Cross-Origin-Opener-Policy",
            "same-origin",
            "Cross-Origin-Resource-Policy",
            "same-origin",
            "Permissions-Policy",
            "geolocation=(self), screen-wake-lock=(self), camera=(), microphone=(), payment=(), usb=()",
            "Cache-Control",
            "no-store");

    private GuardHeaders() {}
}
