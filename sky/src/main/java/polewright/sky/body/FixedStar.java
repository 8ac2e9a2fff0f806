package polewright.sky.body;

import polewright.sky.place.CatalogueStar;

/**
 * A star, or any place that a catalogue or the person gave as right ascension and declination.
 *
 * @param label what to call it
 * @param star its catalogue place and motion
 */
public record FixedStar(String label, CatalogueStar star) implements SkyBody {}
