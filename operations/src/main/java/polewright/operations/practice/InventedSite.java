package polewright.operations.practice;

import java.time.Instant;
import polewright.sky.place.Site;

/**
 * A site that does not exist, under the real sky.
 *
 * @param typed the site as one would type it
 * @param evening when its demo and practices begin
 */
public record InventedSite(String siteName, String typed, Site site, Instant evening) {
    public static final InventedSite LARKFELL = new InventedSite(
            "Larkfell", "54.60,-2.90,240", Site.ofDegrees(54.60, -2.90, 240), Instant.parse("2026-11-25T19:00:00Z"));
    public static final InventedSite TUSSOCK_FLAT = new InventedSite(
            "Tussock Flat",
            "-43.95,170.40,710",
            Site.ofDegrees(-43.95, 170.40, 710),
            Instant.parse("2026-11-25T11:00:00Z"));
}
