package polewright.alignment.sighting;

import java.time.Instant;
import java.util.Optional;

/** A sighting that a person reads and types in, in contrast to camera frames and tables of centrings. */
public sealed interface TypedReading extends Sighting
        permits CompassBearing, LevelledScale, BodyBearing, BodyAltitude, StillPoint, StarDrift, StarTrail {
    @Override
    default Instant ended() {
        return at();
    }

    @Override
    default boolean isEnteredByHand() {
        return true;
    }

    @Override
    default Optional<InstrumentReading> instrumentReading() {
        return Optional.empty();
    }

    /** The error of a shared instrument does not grow on a night of poor seeing. */
    @Override
    default boolean isReadByEye() {
        return instrumentReading().isEmpty();
    }
}
