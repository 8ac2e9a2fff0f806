package polewright.mount.pointing;

import java.util.List;
import polewright.sky.place.Site;

/**
 * A mistake in what all centrings share.
 *
 * @param cause in words that complete "all would fit if …"
 * @param site as it should have been written
 * @param meant the centrings as they should have been written
 */
public record SharedMistake(String cause, Site site, List<CentredStar> meant) {
    public SharedMistake {
        meant = List.copyOf(meant);
    }
}
