package polewright.sky.body;

/** Anything with a name that a telescope can point at: a star or catalogued place, or a body of the solar system. */
public sealed interface SkyBody permits FixedStar, SolarSystemBody {
    /** Its name in a sentence, e.g. {@code "Vega"} or {@code "the Moon"}. */
    String label();
}
