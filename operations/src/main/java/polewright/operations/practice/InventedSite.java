package polewright.operations.practice;

import java.time.Instant;
import polewright.sky.place.Site;

/** A site that does not exist, under the real sky, and the evening on which its demo and practices begin. */
public enum InventedSite {
    LARKFELL("Larkfell", "54.60,-2.90,240", Site.ofDegrees(54.60, -2.90, 240), "2026-11-25T19:00:00Z"),
    TUSSOCK_FLAT("Tussock Flat", "-43.95,170.40,710", Site.ofDegrees(-43.95, 170.40, 710), "2026-11-25T11:00:00Z");

    private final String siteName;
    private final String typed;
    private final Site site;
    private final Instant evening;

    InventedSite(String siteName, String typed, Site site, String evening) {
        this.siteName = siteName;
        this.typed = typed;
        this.site = site;
        this.evening = Instant.parse(evening);
    }

    public String siteName() {
        return siteName;
    }

    /** The site as one would type it. */
    public String typed() {
        return typed;
    }

    public Site site() {
        return site;
    }

    /** When a night there begins. */
    public Instant evening() {
        return evening;
    }
}
