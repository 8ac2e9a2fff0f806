package polewright.sky.body;

/** Anything that a person can name and point at: a star or catalogued place, or a body of the solar system. */
public sealed interface SkyBody permits FixedStar, SolarSystemBody {
    /** What to call it in a sentence, e.g. {@code "Vega"} or {@code "the Moon"}. */
    String label();
}
