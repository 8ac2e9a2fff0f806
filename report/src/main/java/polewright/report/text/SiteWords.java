package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.operations.input.SiteInput;
import polewright.session.DoubtfulSite;
import polewright.sky.PlainNumber;
import polewright.sky.place.Site;

/** Doubts about a site, in words. */
public final class SiteWords {
    private SiteWords() {}

    /** The inconsistency, in one or two sentences without the last full stop. */
    public static String doubt(DoubtfulSite doubtful, String zone) {
        List<String> reasons = new ArrayList<>();
        doubtful.hoursOffZone()
                .ifPresent(hours -> reasons.add(String.format(
                        Locale.ROOT,
                        "%.1f hours %s of this computer's time zone, %s",
                        Math.abs(hours),
                        hours > 0 ? "east" : "west",
                        zone)));
        doubtful.kilometresFromLast()
                .ifPresent(far -> reasons.add(String.format(Locale.ROOT, "%,.0f km from the last night's site", far)));
        String place = place(doubtful.site());
        return reasons.isEmpty() ? place + " looks wrong" : place + " is " + String.join(", and ", reasons);
    }

    /**
     * What to do about it, an imperative without its full stop; it names the argument for the site in braces.
     */
    public static String check(DoubtfulSite doubtful) {
        return doubtful.meant()
                .map(meant -> "if you meant " + place(meant) + ", type {site=" + SiteInput.typed(meant) + "}")
                .orElse("check both figures and their signs; latitude comes first, north and east are positive");
    }

    /** Both, in two sentences. */
    public static String sentences(DoubtfulSite doubtful, String zone) {
        String check = check(doubtful);
        return doubt(doubtful, zone) + ". " + Character.toUpperCase(check.charAt(0)) + check.substring(1) + ".";
    }

    /** {@code 52.1° N, 0.4° E}, to as many digits as were typed. */
    private static String place(Site site) {
        return PlainNumber.asTyped(Math.abs(site.latitude().degrees()))
                + (site.isNorthern() ? "° N, " : "° S, ")
                + PlainNumber.asTyped(Math.abs(site.longitude().degrees()))
                + (site.longitude().radians() >= 0 ? "° E" : "° W");
    }
}
