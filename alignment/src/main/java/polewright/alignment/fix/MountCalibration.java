package polewright.alignment.fix;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.mount.rig.Rig;

/**
 * What a whole night, looked back on, tells of the mount: for the nights that follow.
 *
 * @param rig its screws going as the night has shown
 * @param senses how sure that is, by this night alone where the rig only assumed it
 * @param azimuthFactor azimuth made by the azimuth screw, over what its geometry says; how much of it the base's lean of
 *     that night made is in the variance; nothing while it is not known which way the screw goes
 * @param altitudeFactor altitude made by the altitude screw, over what its geometry says
 * @param shifts what is told of each shift, in order
 */
public record MountCalibration(
        Rig rig,
        ScrewSenses senses,
        Optional<NightAsEntered> azimuthFactor,
        Optional<NightAsEntered> altitudeFactor,
        List<Shift> shifts) {
    public MountCalibration {
        shifts = List.copyOf(shifts);
    }

    /**
     * A shift of the axis on the sky, as the sightings before and after it tell.
     *
     * @param seq the event
     * @param eastArcmin toward east, arcminutes
     * @param upArcmin upward, arcminutes
     */
    public record Shift(long seq, Optional<NightAsEntered> eastArcmin, Optional<NightAsEntered> upArcmin) {}

    /** What a solved night tells over what its rig said beforehand. */
    static MountCalibration of(CondensedPast past, NightSmoother smoother, SmoothedNight night, Fix fix) {
        AxisState before = AxisState.prior(past.site(), past.rig());
        AxisState after = night.last();
        List<Shift> shifts = Stream.concat(past.shifts().stream(), night.shifts(any -> true).stream())
                .map(moved -> new Shift(
                        moved.shifted().seq(),
                        told(
                                moved.shifted().usual().east().arcminutes(),
                                moved,
                                moved.eastArcmin(),
                                moved.eastVariance()),
                        told(moved.shifted().usual().up().arcminutes(), moved, moved.upArcmin(), moved.upVariance())))
                .toList();
        return new MountCalibration(
                fix.rig(),
                fix.senses(),
                factor(before, after, AxisState.AZIMUTH_GAIN)
                        .filter(told -> fix.senses().isAzimuthKnown()
                                || !fix.rig().azimuthScrew().isSenseAssumed())
                        .map(told -> told.blurredBy(smoother.leanOnAzimuth())),
                factor(before, after, AxisState.ALTITUDE_GAIN)
                        .filter(told -> fix.senses().isAltitudeKnown()
                                || !fix.rig().altitudeScrew().isSenseAssumed()),
                shifts);
    }

    private static Optional<NightAsEntered> told(
            double usualArcmin, SmoothedNight.Moved moved, double mean, double variance) {
        return NightAsEntered.between(
                usualArcmin, Math.pow(moved.shifted().sigma().arcminutes(), 2), mean, variance);
    }

    private static Optional<NightAsEntered> factor(AxisState before, AxisState after, int index) {
        return NightAsEntered.between(
                1 + before.mean().getEntry(index),
                before.covariance().getEntry(index, index),
                1 + after.mean().getEntry(index),
                after.covariance().getEntry(index, index));
    }
}
