package polewright.alignment.fix;

import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;

/**
 * The measured effect of the screws relative to the rig description.
 *
 * @param azimuthFactor azimuth moved by the azimuth screw, as a ratio to the rig description; 1 without experience
 * @param altitudeFactor altitude moved by the altitude screw, as a ratio to the rig description; 1 without experience
 * @param azimuthIntoAltitude altitude moved by the azimuth screw, per unit of azimuth expected: a leaning base
 * @param altitudeIntoAzimuth azimuth moved by the altitude screw, per unit of altitude expected
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
    /** The gains learned on earlier nights, or those of the rig description if there were none. */
    public static ScrewGains ofRig(Rig rig) {
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
     * The turns, clockwise positive, that move the axis from one pointing to another; not rounded, and without an
     * allowance for backlash on a reversal. Fast enough for a live display while screws are turned.
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
