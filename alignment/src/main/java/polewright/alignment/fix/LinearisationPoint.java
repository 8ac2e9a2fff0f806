package polewright.alignment.fix;

import java.util.List;

/** A place of the axis: what sightings are drawn straight about. */
record LinearisationPoint(double azimuthRad, double altitudeRad) {
    static LinearisationPoint of(AxisState state) {
        return new LinearisationPoint(state.mean(AxisState.AZIMUTH), state.mean(AxisState.ALTITUDE));
    }

    /** How far apart two are on the sky, radians; for small distances. */
    double from(LinearisationPoint other) {
        double up = other.altitudeRad - altitudeRad;
        double across = (other.azimuthRad - azimuthRad) * Math.cos(altitudeRad);
        return Math.sqrt(up * up + across * across);
    }

    /** How far two solutions have the axis apart at most, on the sky, radians. */
    static double farthest(List<LinearisationPoint> some, List<LinearisationPoint> others) {
        double farthest = 0;
        for (int i = 0; i < some.size(); i++) {
            farthest = Math.max(farthest, some.get(i).from(others.get(i)));
        }
        return farthest;
    }
}
