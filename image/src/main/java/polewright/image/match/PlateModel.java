package polewright.image.match;

/** Distortion models, with the number of stars that each needs. */
public enum PlateModel {
    /** Rotation and scale. */
    PINHOLE(4, 2),
    /** Adds a radial term of third order. */
    RADIAL(5, 8),
    /** Adds unequal scales, shear and all terms of second order. */
    QUADRATIC(12, 20),
    /** Adds all terms of third order. */
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
