package polewright.night.jsonl;

import polewright.night.event.NightEvent;

/** Turns of the wedge's screws. */
final class TurnJson {
    private TurnJson() {}

    /** Legs back are written only where there were any, uncertainties only where nobody counted. */
    static void write(FieldWriter out, NightEvent.ScrewsTurned turned) {
        out.number("azimuth_turns", turned.azimuthTurns()).number("altitude_turns", turned.altitudeTurns());
        if (turned.azimuthBack() != 0) {
            out.number("azimuth_back_turns", turned.azimuthBack());
        }
        if (turned.altitudeBack() != 0) {
            out.number("altitude_back_turns", turned.altitudeBack());
        }
        if (turned.azimuthSigma() != 0) {
            out.number("azimuth_sigma_turns", turned.azimuthSigma());
        }
        if (turned.altitudeSigma() != 0) {
            out.number("altitude_sigma_turns", turned.altitudeSigma());
        }
    }

    static NightEvent.ScrewsTurned read(FieldReader in) {
        double azimuth = in.number("azimuth_turns", 0);
        double altitude = in.number("altitude_turns", 0);
        double azimuthBack = in.number("azimuth_back_turns", 0);
        double altitudeBack = in.number("altitude_back_turns", 0);
        double azimuthSigma = in.number("azimuth_sigma_turns", 0);
        double altitudeSigma = in.number("altitude_sigma_turns", 0);
        return in.made(() ->
                new NightEvent.ScrewsTurned(azimuth, altitude, azimuthBack, altitudeBack, azimuthSigma, altitudeSigma));
    }
}
