package polewright.alignment.sighting;

/**
 * A plausible mistake in a sighting and the corrected sighting.
 *
 * @param cause in words that complete "it would fit if …"
 * @param meant the sighting as it should have been written
 */
public record Misreading(String cause, Sighting meant) {}
