package polewright.alignment.fix;

import java.util.List;

/** A place of the axis: what sightings are drawn straight about. */
record Spot(double azimuthRad, double altitudeRad) {
    static Spot of(AxisState state) {
        return new Spot(state.mean(AxisState.AZIMUTH), state.mean(AxisState.ALTITUDE));
    }

    /** How far apart two are on the sky, radians; for small distances. */
    double from(Spot other) {
        double up = other.altitudeRad - altitudeRad;
        double across = (other.azimuthRad - azimuthRad) * Math.cos(altitudeRad);
        return Math.sqrt(up * up + across * across);
    }

    /** How far two solutions have the axis apart at most, on the sky, radians. */
    static double farthest(List<Spot> some, List<Spot> others) {
        double farthest = 0;
        for (int i = 0; i < some.size(); i++) {
            farthest = Math.max(farthest, some.get(i).from(others.get(i)));
        }
        return farthest;
    }
}
