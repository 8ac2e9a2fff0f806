package polewright.simulation;

import java.time.Duration;

/**
 * How long each thing takes that is done at the mount, for whoever does it: in the dark, gloves on, by someone who has
 * done it before. All common practice, in round figures.
 *
 * @param reading a compass or a wedge's scale, the torch found and the bubble looked at
 * @param stillPoint pointing the tube at the pole, rocking it, and saying where the pole star stands
 * @param settingAStar finding a star, slewing to it and setting it on the mark; watching it comes on top
 * @param pointing slewing a camera to where frames are to be taken; the frames come on top
 * @param goingToTheScrews from the eyepiece or screen to the wedge, clamps loosened if they were tight
 * @param turning one screw, however far
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

    /** One visit to the screws, one or both of them turned. */
    Duration atTheScrews(int screws) {
        return goingToTheScrews.plus(turning.multipliedBy(screws));
    }
}
