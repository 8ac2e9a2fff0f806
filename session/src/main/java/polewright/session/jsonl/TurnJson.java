package polewright.session.jsonl;

import polewright.session.event.Correction;
import polewright.session.event.NightEvent;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;

/** Turns of the wedge's screws. */
final class TurnJson {
    private static final String SCREW = "screw";
    private static final String AZIMUTH = "azimuth";
    private static final String ALTITUDE = "altitude";

    private TurnJson() {}

    /** Legs back are written only if there were any, uncertainties only if the turns were not counted. */
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

    /** The screw is written only if it was one of them. */
    static void writeUnlogged(FieldWriter out, Correction.TurnNotLogged unlogged) {
        out.whole("after_seq", unlogged.seq());
        if (!unlogged.altitude()) {
            out.text(SCREW, AZIMUTH);
        } else if (!unlogged.azimuth()) {
            out.text(SCREW, ALTITUDE);
        }
    }

    static Correction.TurnNotLogged readUnlogged(FieldReader in) {
        long after = in.whole("after_seq");
        if (!in.has(SCREW)) {
            return new Correction.TurnNotLogged(after, true, true);
        }
        String screw = in.text(SCREW);
        if (!screw.equals(AZIMUTH) && !screw.equals(ALTITUDE)) {
            throw in.refused(SCREW, " is unknown", "use azimuth or altitude, or leave it out for both");
        }
        return new Correction.TurnNotLogged(after, screw.equals(AZIMUTH), screw.equals(ALTITUDE));
    }
}
