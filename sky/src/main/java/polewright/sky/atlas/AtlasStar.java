package polewright.sky.atlas;

import polewright.sky.place.CatalogueStar;

/**
 * One star of the atlas.
 *
 * @param place ICRS, J2000.0; with motion where the atlas knows it, otherwise {@link CatalogueStar#fixed}
 * @param magnitude Johnson V for the stars with motion, Tycho VT for the rest (see {@link StarAtlas})
 */
public record AtlasStar(CatalogueStar place, double magnitude) {}
