package polewright.image.match;

/** How much of a lens is fitted, by the number of stars that can carry it. */
public enum PlateModel {
    /** Turn and scale. */
    PINHOLE(4, 2),
    /** And a radial term of third order. */
    RADIAL(5, 8),
    /** And unequal scales, shear and all terms of second order. */
    QUADRATIC(12, 20),
    /** And all terms of third order. */
    CUBIC(20, 40);

    private final int parameters;
    private final int fewestStars;

    PlateModel(int parameters, int fewestStars) {
        this.parameters = parameters;
        this.fewestStars = fewestStars;
    }

    int parameters() {
        return parameters;
    }

    int fewestStars() {
        return fewestStars;
    }
}
