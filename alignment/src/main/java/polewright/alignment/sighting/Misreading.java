package polewright.alignment.sighting;

/**
 * A way in which a sighting may have been mistaken, and what it would then have been.
 *
 * @param cause in words that complete "it would fit if …"
 * @param meant the sighting as it should have been written
 */
public record Misreading(String cause, Sighting meant) {}
