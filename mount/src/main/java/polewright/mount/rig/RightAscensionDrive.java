package polewright.mount.rig;

/**
 * What turns the right-ascension axis after the stars.
 *
 * @param rate how fast
 * @param worm how unevenly
 */
public record RightAscensionDrive(TrackingRate rate, Worm worm) {
    /** At the sidereal rate, its periodic error not measured. */
    public static final RightAscensionDrive USUAL = new RightAscensionDrive(TrackingRate.SIDEREAL, Worm.NOT_COUNTED);
}
