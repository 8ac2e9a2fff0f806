package polewright.mount.pointing;

import java.util.List;

/**
 * Centrings after they were weighed against each other.
 *
 * @param believed those to fit, in their order; neither what is wrong nor what may be
 * @param doubts empty when all agree within chance
 */
public record CheckedCentrings(List<CentredStar> believed, List<CentringDoubt> doubts) {
    public CheckedCentrings {
        believed = List.copyOf(believed);
        doubts = List.copyOf(doubts);
    }
}
