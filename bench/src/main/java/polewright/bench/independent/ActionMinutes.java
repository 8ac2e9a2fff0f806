package polewright.bench.independent;

import java.time.Duration;

/**
 * How long everything takes, in the dark, with gloves on (common practice). The figures are those of the project's
 * rehearsals.
 */
final class ActionMinutes {
    static final Duration READING = Duration.ofMinutes(2);
    static final Duration STILL_POINT = Duration.ofMinutes(4);
    static final Duration SETTING_A_STAR = Duration.ofMinutes(2);
    static final Duration GOING_TO_THE_SCREWS = Duration.ofMinutes(1);
    static final Duration TURNING_ONE_SCREW = Duration.ofSeconds(30);
    static final Duration MOVING_BY_HAND = Duration.ofMinutes(4);
    static final Duration CLAMPING = Duration.ofMinutes(2);

    static final Duration CORRECTING = Duration.ofMinutes(1);

    private ActionMinutes() {}

    static Duration atTheScrews(double azimuthTurns, double altitudeTurns) {
        int screws = (azimuthTurns == 0 ? 0 : 1) + (altitudeTurns == 0 ? 0 : 1);
        return GOING_TO_THE_SCREWS.plus(TURNING_ONE_SCREW.multipliedBy(screws));
    }
}
