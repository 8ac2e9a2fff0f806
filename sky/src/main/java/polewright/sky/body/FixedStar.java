package polewright.sky.body;

import polewright.sky.place.CatalogueStar;

/**
 * A star, or any place given as right ascension and declination by a catalogue or by the person.
 *
 * @param label its name in sentences
 * @param star its catalogue place and proper motion
 */
public record FixedStar(String label, CatalogueStar star) implements SkyBody {}
