package polewright.alignment.sighting;

import polewright.sky.angle.Angle;

/** A reading of an instrument whose error is common to all its readings while the tripod is not moved. */
public sealed interface InstrumentReading permits CompassBearing, LevelledScale, BodyBearing {
    SharedInstrument instrument();

    Angle sigma();

    /** The same reading with another uncertainty. */
    Sighting withSigma(Angle other);
}
