package polewright.alignment.fix;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.RealMatrix;
import polewright.sky.angle.Angle;

/** What the turns of a night have shown about the mount as set up, beyond the gain of each screw. */
public sealed interface ScrewFinding {
    /**
     * The base is out of level to one side, so each screw also moves the axis in the other screw's direction.
     *
     * @param toTheRight the lean of its vertical axis to the right, as seen facing the pole; negative to the left
     * @param sigma 1 sigma of that
     */
    record LeaningBase(Angle toTheRight, Angle sigma) implements ScrewFinding {}

    /**
     * The altitude hinge is not square to the azimuth pivot, so raising the axis also moves it sideways.
     *
     * @param toTheRight the squareness error; positive if raising moves the axis to the right, as seen facing the pole
     * @param sigma 1 sigma of that
     */
    record CrookedHinge(Angle toTheRight, Angle sigma) implements ScrewFinding {}

    /** The findings that are significant at three sigmas and large enough to matter. */
    static List<ScrewFinding> of(AxisState state) {
        double azimuthIntoAltitude = state.mean().getEntry(AxisState.AZIMUTH_INTO_ALTITUDE);
        double altitudeIntoAzimuth = state.mean().getEntry(AxisState.ALTITUDE_INTO_AZIMUTH);
        RealMatrix covariance = state.covariance();
        double ofAzimuth = covariance.getEntry(AxisState.AZIMUTH_INTO_ALTITUDE, AxisState.AZIMUTH_INTO_ALTITUDE);
        double ofAltitude = covariance.getEntry(AxisState.ALTITUDE_INTO_AZIMUTH, AxisState.ALTITUDE_INTO_AZIMUTH);
        double ofBoth = covariance.getEntry(AxisState.AZIMUTH_INTO_ALTITUDE, AxisState.ALTITUDE_INTO_AZIMUTH);
        // A lean of β to the right gives −β and β / cos²; the rest of the second comes from the hinge.
        double cosSquared = Math.pow(Math.max(Limits.LEAST_COS, state.altitude().cos()), 2);
        double hinge = cosSquared * altitudeIntoAzimuth + azimuthIntoAltitude;
        double hingeVariance = cosSquared * cosSquared * ofAltitude + 2 * cosSquared * ofBoth + ofAzimuth;
        List<ScrewFinding> findings = new ArrayList<>();
        if (Limits.standsOut(azimuthIntoAltitude, ofAzimuth)) {
            findings.add(new LeaningBase(new Angle(-azimuthIntoAltitude), new Angle(Math.sqrt(ofAzimuth))));
        }
        if (Limits.standsOut(hinge, hingeVariance)) {
            findings.add(new CrookedHinge(new Angle(hinge), new Angle(Math.sqrt(hingeVariance))));
        }
        return List.copyOf(findings);
    }

    /** The thresholds for reporting a finding. */
    final class Limits {
        private static final double SIGMAS = 3;
        // Half a degree makes one screw spoil a hundredth of the other's work.
        private static final Angle WORTH_REPORTING = Angle.ofDegrees(0.5);
        private static final double LEAST_COS = 0.1;

        private Limits() {}

        private static boolean standsOut(double radians, double variance) {
            return Math.abs(radians) > Math.max(WORTH_REPORTING.radians(), SIGMAS * Math.sqrt(Math.max(0, variance)));
        }
    }
}
