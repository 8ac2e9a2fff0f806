package polewright.sky.atlas;

/**
 * One of the 88 constellations.
 *
 * @param abbreviation the IAU's three letters, e.g. {@code UMa}
 * @param name Latin, e.g. {@code Ursa Major}
 * @param genitive as it follows a star's letter, e.g. {@code Ursae Majoris}
 */
public record Constellation(String abbreviation, String name, String genitive) {}
