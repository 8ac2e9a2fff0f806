package polewright.axis.fix;

import java.util.Optional;

/**
 * How one sighting agrees with the rest of the night.
 *
 * @param seq the event
 * @param kind what kind of sighting, in plain words
 * @param squaredInnovation χ² of the sighting against all others together
 * @param figures its degrees of freedom
 * @param contradictory whether it was set aside
 * @param eastShare how much of what it tells is of east and west, 0 to 1; the rest is of the axis's height
 * @param likelyCause for one set aside: completes "it would fit if …"; empty when no usual mistake explains it
 */
public record Agreement(
        long seq,
        String kind,
        double squaredInnovation,
        int figures,
        boolean contradictory,
        double eastShare,
        Optional<String> likelyCause) {}
