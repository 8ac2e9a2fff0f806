package polewright.sky.atlas;

/** Receives the stars of a search one at a time, as numbers. */
@FunctionalInterface
public interface StarVisitor {
    /**
     * Receives one star.
     *
     * @param number the star's number in its atlas, see {@link StarAtlas#star}
     * @param x unit vector in the ICRS at the epoch of the search, toward 0h on the equator
     * @param y toward 6h on the equator
     * @param z toward the north pole
     * @param magnitude see {@link StarAtlas}
     */
    void star(int number, double x, double y, double z, double magnitude);
}
