package polewright.sky.magnetic;

import java.util.List;
import polewright.sky.angle.Angle;

/**
 * The magnetic field at a place and time according to a model.
 *
 * @param northNanotesla toward true (geodetic) north
 * @param eastNanotesla toward east
 * @param downNanotesla into the ground, along the vertical of the ellipsoid
 * @param notes caveats for the person, whole sentences; empty if there are none
 */
public record MagneticField(double northNanotesla, double eastNanotesla, double downNanotesla, List<String> notes) {
    /** WMM2025's error model for declination: the part that is the same everywhere. */
    private static final double DECLINATION_ERROR_DEG = 0.26;
    /** WMM2025's error model for declination: the part that grows as the horizontal field fades. */
    private static final double DECLINATION_ERROR_DEG_NANOTESLA = 5417;

    public MagneticField {
        notes = List.copyOf(notes);
    }

    /** Direction of the needle from true north, east positive: true bearing = compass bearing + declination. */
    public Angle declination() {
        return new Angle(Math.atan2(eastNanotesla, northNanotesla));
    }

    /** Angle of the field below the horizontal, positive down. */
    public Angle inclination() {
        return new Angle(Math.atan2(downNanotesla, horizontalNanotesla()));
    }

    public double horizontalNanotesla() {
        return Math.hypot(northNanotesla, eastNanotesla);
    }

    public double totalNanotesla() {
        return Math.hypot(horizontalNanotesla(), downNanotesla);
    }

    /**
     * Standard deviation of the declination by the model's own error model, √(0.26² + (5417/H)²) degrees, H the
     * horizontal intensity in nT: about 0.4° in middle latitudes. It allows for local geology and for secular change
     * over the model's five years, but not for iron near the compass (a mount, a car, a belt buckle), which is commonly
     * worse.
     *
     * <p>Source: error model of the WMM2025 technical report (NOAA NCEI and British Geological Survey, 2024). The
     * report was not read: the figures are as quoted in public source code that cites it.
     */
    public Angle declinationUncertainty() {
        return Angle.ofDegrees(
                Math.hypot(DECLINATION_ERROR_DEG, DECLINATION_ERROR_DEG_NANOTESLA / horizontalNanotesla()));
    }

    public CompassTrust compassTrust() {
        return CompassTrust.at(horizontalNanotesla());
    }
}
