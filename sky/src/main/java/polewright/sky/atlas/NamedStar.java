package polewright.sky.atlas;

import java.util.List;
import polewright.sky.place.CatalogueStar;

/**
 * A star with a name or a letter.
 *
 * @param names common names, the most used first; may be empty
 * @param designations e.g. {@code alp Lyr}, {@code 3 Lyr}, {@code HIP 91262}; at least one
 * @param place ICRS, J2000.0
 * @param magnitude Johnson V
 * @param motionKnown false when the proper motion is unknown here and given as 0: the error of such a place grows by a
 *     few arcseconds in decades, in rare cases by an arcminute
 */
public record NamedStar(
        List<String> names, List<String> designations, CatalogueStar place, double magnitude, boolean motionKnown) {
    public NamedStar {
        names = List.copyOf(names);
        designations = List.copyOf(designations);
    }

    /** The common name, or the first designation of a star without one. */
    public String label() {
        return names.isEmpty() ? designations.get(0) : names.get(0);
    }
}
