package polewright.mount.rig;

/**
 * The drive that turns the right-ascension axis with the stars.
 *
 * @param rate its mean rate
 * @param worm its periodic error
 */
public record RightAscensionDrive(TrackingRate rate, Worm worm) {
    /** At the sidereal rate, with unmeasured periodic error. */
    public static final RightAscensionDrive USUAL = new RightAscensionDrive(TrackingRate.SIDEREAL, Worm.NOT_COUNTED);
}
