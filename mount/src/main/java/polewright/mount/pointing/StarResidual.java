package polewright.mount.pointing;

/**
 * The residuals of a star.
 *
 * @param offset observed minus model
 * @param crossValidated the same for a model fitted without this star: the error of a go-to there
 * @param crossValidatedSquare crossValidated relative to its expected size, χ² with 2 degrees of freedom if the model
 *     is right
 */
public record StarResidual(
        Centring centring, SkyOffset offset, SkyOffset crossValidated, double crossValidatedSquare) {}
