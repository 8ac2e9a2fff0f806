package polewright.sky.atlas;

import polewright.sky.place.CatalogueStar;

/**
 * One star of the atlas.
 *
 * @param place ICRS, J2000.0; with proper motion where the atlas has it, otherwise {@link CatalogueStar#fixed}
 * @param magnitude Johnson V for the stars with proper motion, Tycho VT for the rest (see {@link StarAtlas})
 */
public record AtlasStar(CatalogueStar place, double magnitude) {}
