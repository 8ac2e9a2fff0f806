package polewright.mount.pointing;

import java.util.List;
import polewright.sky.place.Site;

/**
 * A mistake common to all centrings.
 *
 * @param cause in words that complete "all would fit if …"
 * @param site the corrected site
 * @param meant the corrected centrings
 */
public record SharedMistake(String cause, Site site, List<CentredStar> meant) {
    public SharedMistake {
        meant = List.copyOf(meant);
    }
}
