package polewright.alignment.fix;

import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;

/**
 * What the screws have turned out to do, against what the rig says of them.
 *
 * @param azimuthFactor azimuth made by the azimuth screw, over what the rig says; 1 at first, when no earlier night taught better
 * @param altitudeFactor altitude made by the altitude screw, over what the rig says; 1 at first, when no earlier night taught better
 * @param azimuthIntoAltitude altitude made by the azimuth screw, per unit of azimuth expected: a leaning base
 * @param altitudeIntoAzimuth azimuth made by the altitude screw, per unit of altitude expected
 * @param azimuthSigma 1 sigma of {@code azimuthFactor}
 * @param altitudeSigma 1 sigma of {@code altitudeFactor}
 */
public record ScrewGains(
        double azimuthFactor,
        double altitudeFactor,
        double azimuthIntoAltitude,
        double altitudeIntoAzimuth,
        double azimuthSigma,
        double altitudeSigma) {
    /** The screws as earlier nights found them; where there were none, at the rig's word. */
    public static ScrewGains asTheRigSays(Rig rig) {
        return rig.experience()
                .map(learned -> new ScrewGains(
                        learned.azimuthFactor(),
                        learned.altitudeFactor(),
                        0,
                        0,
                        learned.azimuthSigma(),
                        learned.altitudeSigma()))
                .orElseGet(() -> new ScrewGains(
                        1,
                        1,
                        0,
                        0,
                        rig.azimuthScrew().relativeGainSigma(),
                        rig.altitudeScrew().relativeGainSigma()));
    }

    /**
     * The turns, clockwise positive, that take effect as the way from one axis to another; not rounded, and without what
     * play costs on a reversal. Quick enough to be shown live while screws are turned.
     */
    public AxisState.Turns turnsBetween(AxisPointing from, AxisPointing to, Rig rig) {
        double azimuthMove = to.azimuth().minus(from.azimuth()).wrappedSigned().radians();
        double altitudeMove = to.altitude().minus(from.altitude()).radians();
        double determinant = azimuthFactor * altitudeFactor - azimuthIntoAltitude * altitudeIntoAzimuth;
        double azimuthAsked = (altitudeFactor * azimuthMove - altitudeIntoAzimuth * altitudeMove) / determinant;
        double altitudeAsked = (azimuthFactor * altitudeMove - azimuthIntoAltitude * azimuthMove) / determinant;
        return new AxisState.Turns(
                rig.azimuthScrew().turnsFor(new Angle(azimuthAsked), from.altitude()),
                rig.altitudeScrew().turnsFor(new Angle(altitudeAsked), from.altitude()));
    }
}
