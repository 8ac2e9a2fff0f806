package polewright.alignment.fix;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.mount.rig.Rig;

/**
 * What a whole night has shown about the mount, for use on later nights.
 *
 * @param rig with the screw directions that the night has shown
 * @param senses how certain those directions are, from this night alone where the rig only assumed them
 * @param azimuthFactor azimuth moved by the azimuth screw, as a ratio to what its geometry predicts. The variance
 *     includes the possible contribution of that night's base lean. Empty while the screw's direction is unknown
 * @param altitudeFactor altitude moved by the altitude screw, as a ratio to what its geometry predicts
 * @param shifts the estimate of each shift, in order of time
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
     * A shift of the axis on the sky, estimated from the sightings before and after it.
     *
     * @param seq the number of the event
     * @param eastArcmin toward east, arcminutes
     * @param upArcmin upward, arcminutes
     */
    public record Shift(long seq, Optional<NightAsEntered> eastArcmin, Optional<NightAsEntered> upArcmin) {}

    /** What a solved night adds to its rig description. */
    static MountCalibration of(CondensedPast past, NightSmoother smoother, SmoothedNight night, Fix fix) {
        AxisState before = AxisState.prior(past.site(), past.rig());
        AxisState after = night.last();
        List<Shift> shifts = Stream.concat(past.shifts().stream(), night.shifts(any -> true).stream())
                .map(moved -> new Shift(
                        moved.shifted().seq(),
                        estimate(
                                moved.shifted().usual().east().arcminutes(),
                                moved,
                                moved.eastArcmin(),
                                moved.eastVariance()),
                        estimate(
                                moved.shifted().usual().up().arcminutes(),
                                moved,
                                moved.upArcmin(),
                                moved.upVariance())))
                .toList();
        return new MountCalibration(
                fix.rig(),
                fix.senses(),
                factor(before, after, AxisState.AZIMUTH_GAIN)
                        .filter(estimate -> fix.senses().isAzimuthKnown()
                                || !fix.rig().azimuthScrew().isSenseAssumed())
                        .map(estimate -> estimate.widenedBy(smoother.leanOnAzimuth())),
                factor(before, after, AxisState.ALTITUDE_GAIN)
                        .filter(estimate -> fix.senses().isAltitudeKnown()
                                || !fix.rig().altitudeScrew().isSenseAssumed()),
                shifts);
    }

    private static Optional<NightAsEntered> estimate(
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
