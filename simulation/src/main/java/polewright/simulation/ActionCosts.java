package polewright.simulation;

import java.time.Duration;

/**
 * The time each action at the mount takes: in the dark, with gloves on, by an experienced observer. All common
 * practice, in round figures.
 *
 * @param reading a compass or a wedge's scale, including finding the torch and checking the bubble
 * @param stillPoint pointing the tube at the pole, swinging it, and noting where the pole star is relative to the
 *     centre of rotation
 * @param settingAStar finding a star, slewing to it and setting it on the mark; the watching time is added
 * @param pointing slewing a camera to where frames are taken; the exposures are added
 * @param goingToTheScrews from the eyepiece or screen to the wedge, including loosening tight clamps
 * @param turning one screw, by any amount
 * @param look one more frame while at the screws
 * @param movingByHand swinging the whole mount and levelling it again
 * @param clamping tightening all clamps, gently, in turn
 */
public record ActionCosts(
        Duration reading,
        Duration stillPoint,
        Duration settingAStar,
        Duration pointing,
        Duration goingToTheScrews,
        Duration turning,
        Duration look,
        Duration movingByHand,
        Duration clamping) {
    public static final ActionCosts USUAL = new ActionCosts(
            Duration.ofMinutes(2),
            Duration.ofMinutes(4),
            Duration.ofMinutes(2),
            Duration.ofMinutes(2),
            Duration.ofMinutes(1),
            Duration.ofSeconds(30),
            Duration.ofSeconds(20),
            Duration.ofMinutes(4),
            Duration.ofMinutes(2));

    /** One visit to the screws, turning one or both. */
    Duration atTheScrews(int screws) {
        return goingToTheScrews.plus(turning.multipliedBy(screws));
    }
}
