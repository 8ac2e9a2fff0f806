package polewright.sky.atlas;

import java.util.List;
import java.util.OptionalDouble;
import polewright.sky.place.CatalogueStar;

/**
 * A galaxy, cluster or nebula.
 *
 * @param designations e.g. {@code M 31}, {@code NGC 224}; the best known one first, at least one
 * @param names common English names; may be empty
 * @param kind its type
 * @param place ICRS, no motion; accurate to about 1′ for large, irregular objects
 * @param magnitude integrated, visual or blue as in the source; empty when unknown
 * @param majorArcmin major axis; empty when unknown
 * @param minorArcmin minor axis; equal to the major axis where the source has one figure
 */
public record DeepSkyObject(
        List<String> designations,
        List<String> names,
        DeepSkyKind kind,
        CatalogueStar place,
        OptionalDouble magnitude,
        OptionalDouble majorArcmin,
        OptionalDouble minorArcmin) {
    public DeepSkyObject {
        designations = List.copyOf(designations);
        names = List.copyOf(names);
    }

    /** The best known designation, with the common name if there is one: {@code M 31 (Andromeda Galaxy)}. */
    public String label() {
        return designations.get(0) + (names.isEmpty() ? "" : " (" + names.get(0) + ")");
    }
}
