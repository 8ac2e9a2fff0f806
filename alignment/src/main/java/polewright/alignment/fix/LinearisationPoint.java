package polewright.alignment.fix;

import java.util.List;

/** The axis pointing about which sightings are linearised. */
record LinearisationPoint(double azimuthRad, double altitudeRad) {
    static LinearisationPoint of(AxisState state) {
        return new LinearisationPoint(state.mean(AxisState.AZIMUTH), state.mean(AxisState.ALTITUDE));
    }

    /** Distance on the sky, radians; valid for small distances. */
    double from(LinearisationPoint other) {
        double up = other.altitudeRad - altitudeRad;
        double across = (other.azimuthRad - azimuthRad) * Math.cos(altitudeRad);
        return Math.sqrt(up * up + across * across);
    }

    /** The largest distance on the sky between corresponding points of two solutions, radians. */
    static double farthest(List<LinearisationPoint> some, List<LinearisationPoint> others) {
        double farthest = 0;
        for (int i = 0; i < some.size(); i++) {
            farthest = Math.max(farthest, some.get(i).from(others.get(i)));
        }
        return farthest;
    }
}
