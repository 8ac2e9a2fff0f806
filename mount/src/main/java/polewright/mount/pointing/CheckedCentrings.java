package polewright.mount.pointing;

import java.util.List;

/**
 * Centrings after the cross-check.
 *
 * @param believed those to fit, in their order, without any that are or may be wrong
 * @param doubts empty if all agree within chance
 */
public record CheckedCentrings(List<CentredStar> believed, List<CentringDoubt> doubts) {
    public CheckedCentrings {
        believed = List.copyOf(believed);
        doubts = List.copyOf(doubts);
    }
}
